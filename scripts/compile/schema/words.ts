import { z } from 'zod';

/** What every id looks like: safe as a key, a file name, a part of an address. */
export const idPattern = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;

/** An id in kebab-case. */
export const id = z
  .string()
  .regex(idPattern, { error: 'not-an-id' })
  .meta({
    description: 'small letters and digits, words joined by hyphens; never changes once published',
    examples: ['obm-1183'],
  });

/** An id of another record. */
export const idOf = (kind: string) =>
  z
    .string()
    .min(1)
    .meta({ description: `id of a ${kind}`, examples: [`some-${kind.replaceAll(' ', '-')}`] });

/** A language tag such as en, es or pt-BR (the shapes of BCP 47 that languages with a name of two or three letters have). */
export const language = z.string().regex(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/, { error: 'not-a-language' });

/** A text in each language of the lineage: language tag to text. */
export const texts = z.record(language, z.string().min(1)).meta({
  description: 'the text in each language of the lineage',
  examples: [{ en: 'snout tip', es: 'punta del hocico' }],
});

/** A plain line of text that is not translated. */
export const line = z.string().min(1);

function isInCalendar(day: string): boolean {
  const instant = new Date(`${day}T00:00:00Z`);
  return !Number.isNaN(instant.getTime()) && instant.toISOString().startsWith(day);
}

/** The key of one source. */
export const reference = line.meta({
  description: 'key of the entry in references.bib that says so',
  examples: ['obm-2024'],
});

/** A calendar day as 2026-11-25. */
export const day = z
  .string()
  .regex(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/, { error: 'not-a-day' })
  .refine(isInCalendar, { error: 'not-a-day' })
  .meta({ description: 'a day, as year-month-day', examples: ['2026-11-25'] });

/** Keys of sources in references.bib. */
export const sources = z.array(z.string().min(1)).meta({
  description: 'keys of entries in references.bib',
  examples: [['obm-2024']],
});

/** A file of the lineage folder, never outside it. */
export const file = z
  .string()
  .min(1)
  .meta({ description: 'path from the lineage folder', examples: ['sheets/landmarks.csv'] });

/** A picture or drawing may be shown where its rights allow. */
export const venue = z.enum(['pages', 'gallery', 'class', 'print']).meta({
  description: 'pages: the web pages; gallery: a kiosk; class: the classroom pack; print: plates',
});

/** Who allows a picture to be shown, under which licence, where and until when. */
export const rights = z
  .strictObject({
    image: line.optional().meta({
      description: 'who holds the rights in the picture, as it is to be credited',
      examples: ['Osier Basin Museum'],
    }),
    licence: line.optional().meta({
      description: 'SPDX identifier, or the address of a licence',
      examples: ['CC0-1.0', 'CC-BY-4.0'],
    }),
    venues: z
      .array(venue)
      .optional()
      .meta({ description: 'where it may be shown; left out means everywhere' }),
    until: day.optional().meta({ description: 'last day on which it may be shown' }),
    embargo: day.optional().meta({ description: 'nothing of it may be shown before this day' }),
  })
  .meta({ description: 'permission to show the picture' });
