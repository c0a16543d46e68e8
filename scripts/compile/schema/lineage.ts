import { z } from 'zod';
import { day, file, id, idOf, language, line, reference, texts, venue } from './words.ts';

const dating = z.strictObject({
  method: z.enum(['equal-share', 'minimum-branch', 'given']).meta({
    description:
      'how forks get their ages: share of the time above, a shortest branch, or the branch lengths given',
  }),
  root: z
    .number()
    .positive()
    .optional()
    .meta({ description: 'age of the root, Ma', examples: [55] }),
  minimumBranch: z
    .number()
    .positive()
    .optional()
    .meta({ description: 'shortest branch, million years', examples: [1] }),
});

const tree = z
  .strictObject({
    id,
    newick: z
      .string()
      .min(1)
      .optional()
      .meta({ description: 'the tree in Newick; tips are taxon ids', examples: ['((a,b),c);'] }),
    file: file
      .optional()
      .meta({ description: 'a Newick or NEXUS file instead', examples: ['trees/rival.nex'] }),
    name: line
      .optional()
      .meta({ description: 'which tree of a NEXUS file that holds several', examples: ['strict'] }),
    dating: z
      .union([dating, dating.shape.method])
      .meta({ description: 'how its forks get their ages', examples: [{ method: 'equal-share', root: 55 }] }),
    source: reference.optional(),
    prefer: z.boolean().optional().meta({ description: 'true on the tree that the headline numbers use' }),
    note: texts.optional(),
  })
  .meta({ description: 'one hypothesis of relationships' });

const estimate = z
  .strictObject({
    model: z
      .enum(['auto', 'brownian', 'trend'])
      .default('auto')
      .meta({ description: 'how a trait is thought to wander' }),
    seed: z
      .int()
      .nonnegative()
      .default(1)
      .meta({ description: 'start of the random numbers, so that a rebuild gives the same', examples: [1] }),
    ageDraws: z
      .int()
      .min(0)
      .max(5000)
      .default(200)
      .meta({ description: 'how many sampled sets of ages the span rests on', examples: [200] }),
  })
  .prefault({})
  .meta({ description: 'how missing values are worked out' });

const change = z
  .object({
    reason: z
      .enum(['first', 'new-evidence', 'correction', 'wording', 'method'])
      .meta({ description: 'why something changed' }),
  })
  .catchall(z.string())
  .meta({
    description: 'why, and what changed in each language',
    examples: [{ reason: 'first', en: 'First edition.' }],
  });

const edition = z.strictObject({
  number: z
    .int()
    .positive()
    .meta({ description: 'counts up with each edition', examples: [1] }),
  date: day,
  status: z
    .enum(['draft', 'in-review', 'signed', 'withdrawn'])
    .meta({ description: 'draft and in-review are marked as such on pages' }),
  changes: z.array(change).optional().meta({ description: 'what changed since the last edition' }),
});

const oneOrMore = z.union([line.transform((one) => [one]), z.array(line)]);

/** lineage.yaml: what the pages are about. */
export const lineage = z
  .strictObject({
    title: texts,
    question: texts.meta({ description: 'the question a visitor comes with' }),
    invented: z
      .boolean()
      .default(false)
      .meta({ description: 'true marks every page, plate and download as invented' }),
    languages: z
      .array(language)
      .min(1)
      .meta({ description: 'first is the main one', examples: [['en', 'es']] }),
    focus: idOf('trait').meta({ description: 'the trait that the pages open with' }),
    trees: z.array(tree).default([]).meta({
      description: 'one tree or several; the first, or the one with prefer: true, gives the printed numbers',
    }),
    estimate,
    editions: z.array(edition).min(1).meta({ description: 'what was published when, and why' }),
    credits: oneOrMore.default([]).meta({ description: 'who made this, a line each' }),
    licence: line.meta({
      description: 'SPDX identifier, or the address of a licence',
      examples: ['CC-BY-4.0'],
    }),
    contact: line.optional().meta({ description: 'how readers reach you', examples: ['names@example.org'] }),
    venues: z
      .array(venue)
      .default(['pages'])
      .meta({
        description: 'where this is to be shown: every picture must be allowed in each of them',
        examples: [['pages', 'gallery']],
      }),
    embargo: day.optional().meta({ description: 'no public build before this day' }),
    sensitive: z
      .array(z.enum(['human-remains', 'culturally-sensitive']))
      .optional()
      .meta({
        description: 'brings a notice, and keeps the material out of galleries and classes unless allowed',
      }),
  })
  .meta({ title: 'lineage.yaml', description: 'what this lineage is about' });

export type AuthoredLineage = z.output<typeof lineage>;
export type AuthoredTree = AuthoredLineage['trees'][number];
