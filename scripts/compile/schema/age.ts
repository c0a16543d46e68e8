import { z } from 'zod';

const stage = z
  .string()
  .min(1)
  .meta({
    description: 'name of a stage, epoch or period of the International Chronostratigraphic Chart',
    examples: ['Lutetian'],
  });
const million = (what: string) => z.number().meta({ description: `${what}, in millions of years ago (Ma)` });

const byStage = z.strictObject({ stage }).meta({ description: 'known only to the stage' });
const byStages = z
  .strictObject({
    stages: z
      .array(stage)
      .min(2)
      .meta({ description: 'stages, any of which it may be', examples: [['Lutetian', 'Bartonian']] }),
  })
  .meta({ description: 'somewhere in these stages' });
const byBounds = z
  .strictObject({
    from: million('older end').meta({ examples: [43.0] }),
    to: million('younger end').meta({ examples: [40.4] }),
    stage: stage.optional(),
    method: z
      .string()
      .optional()
      .meta({ description: 'what the two ends rest on', examples: ['dated tuffs below and above'] }),
  })
  .meta({ description: 'bracketed, for example by dated beds below and above' });
const byDate = z
  .strictObject({
    date: million('the dated age').meta({ examples: [41.2] }),
    plusMinus: z.number().meta({ description: 'its error, in million years', examples: [0.15] }),
    sigma: z
      .union([z.literal(1), z.literal(2)])
      .meta({ description: 'how many standard deviations the error is' }),
    method: z
      .string()
      .optional()
      .meta({ description: 'how it was dated', examples: ['Ar-Ar, single crystal'] }),
    material: z
      .string()
      .optional()
      .meta({ description: 'what was dated', examples: ['sanidine'] }),
    stage: stage.optional(),
  })
  .meta({ description: 'a radiometric date of the bed itself' });

/** How old a bed is: by stage name, by bounds, or by a date with its error. */
export const age = z
  .union([byStage, byStages, byBounds, byDate])
  .meta({ description: '{ stage }, { stages }, { from, to } or { date, plusMinus, sigma }' });

export type AuthoredAge = z.output<typeof age>;
