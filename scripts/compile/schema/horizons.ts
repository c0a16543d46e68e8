import { z } from 'zod';
import { age } from './age.ts';
import { id, idOf, line, sources, texts } from './words.ts';

const oneOrMore = z.union([idOf('horizon').transform((one) => [one]), z.array(idOf('horizon'))]);

/** One bed of horizons.yaml. */
export const horizon = z
  .strictObject({
    id,
    formation: line.meta({ description: 'name of the formation', examples: ['Sedge Hollow'] }),
    member: line
      .optional()
      .meta({ description: 'name of the member, where there is one', examples: ['Upper Sedge'] }),
    bed: line.optional().meta({ description: 'quote numbers', examples: ['7'] }),
    age,
    above: oneOrMore.optional().meta({ description: 'beds that lie below this one in the same section' }),
    note: texts.optional(),
    sources: sources.optional(),
  })
  .meta({ description: 'a bed and its age' });

/** horizons.yaml: the beds. */
export const horizons = z
  .array(horizon)
  .meta({ title: 'horizons.yaml', description: 'the beds and their ages' });

export type Horizon = z.output<typeof horizon>;
