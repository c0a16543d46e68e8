import { z } from 'zod';
import { id, idOf, line, reference, texts } from './words.ts';

const mark = z
  .object({
    at: z.number().meta({ description: 'place on the scale, in the unit of the trait', examples: [100] }),
  })
  .catchall(z.string())
  .meta({
    description: 'a place on the scale with its name in each language',
    examples: [{ at: 0, en: 'the snout tip' }],
  });

/** One trait of traits.yaml: exactly one of ratio, length, angle, count and size. */
export const trait = z
  .strictObject({
    id,
    label: texts,
    meaning: texts,
    ratio: z
      .strictObject({
        part: idOf('measurement'),
        whole: idOf('measurement'),
        unit: z
          .enum(['percent', 'none'])
          .default('percent')
          .meta({ description: 'percent, or a plain ratio' }),
      })
      .optional()
      .meta({ description: 'one length as a share of another of the same animal' }),
    length: idOf('measurement').optional(),
    angle: idOf('measurement').optional(),
    count: idOf('measurement').optional(),
    size: z
      .union([z.array(idOf('measurement')).min(1), idOf('measurement')])
      .optional()
      .meta({
        description:
          'a list makes the trait a size (their geometric mean); one id names what size means for a trait of another kind',
      }),
    scale: z
      .enum(['plain', 'log', 'logit'])
      .optional()
      .meta({ description: 'log is the default for lengths, sizes and ratios' }),
    why: texts.optional().meta({ description: 'why this scale' }),
    adults: z
      .enum(['only', 'all'])
      .default('only')
      .meta({ description: 'who counts: adults only, or all ages' }),
    uncertain: z
      .enum(['exclude', 'include'])
      .default('exclude')
      .meta({ description: 'whether cf. and aff. count' }),
    admits: texts.optional().meta({ description: 'why young or doubtful specimens count' }),
    marks: z.array(mark).default([]).meta({ description: 'places on the scale that have a name' }),
    accent: line
      .optional()
      .meta({ description: 'part of the drawing that carries the colour', examples: ['nasal-opening'] }),
    source: reference.optional(),
  })
  .meta({ description: 'what is plotted' });

/** traits.yaml: what is plotted. */
export const traits = z.array(trait).meta({ title: 'traits.yaml', description: 'what is plotted' });

export type Trait = z.output<typeof trait>;
