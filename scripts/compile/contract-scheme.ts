import { z } from 'zod';
import { texts } from './contract-words.ts';

/* The part of the compiled lineage that says what is measured and how; `contract.ts` is the whole. */

const axisChoice = {
  from: z.string(),
  to: z.string(),
};

/** What is measured on a specimen and how, for those who measure the next one. */
export const scheme = z.object({
  views: z.array(z.object({ id: z.string(), name: texts.optional(), dimensions: z.number().int() })),
  landmarks: z.array(
    z.object({
      id: z.string(),
      name: texts,
      definition: texts.optional(),
      views: z.array(z.string()).optional().describe('left out means all of them'),
    }),
  ),
  measurements: z
    .array(
      z.object({
        id: z.string(),
        name: texts.optional(),
        from: z.string().optional(),
        to: z.string().optional(),
        along: z
          .string()
          .optional()
          .describe('axis that a length is measured along; left out means straight'),
        through: z.array(z.string()).optional().describe('points on the way of a length along a curve'),
        angle: z.array(z.string()).optional().describe('three landmarks, the vertex in the middle'),
      }),
    )
    .describe('those that landmarks give; what only callipers give is not here'),
  axes: z.array(
    z.object({
      id: z.string(),
      name: texts.optional(),
      ...axisChoice,
      else: z.array(z.object({ ...axisChoice, turned: z.number().optional() })).optional(),
    }),
  ),
  traits: z
    .array(z.object({ trait: z.string(), measurements: z.array(z.string()), times: z.number() }))
    .describe('measurements of each trait in order; a ratio is the first over the second, times so much'),
});
