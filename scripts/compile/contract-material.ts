import { z } from 'zod';
import { texts } from './contract-words.ts';

/* The part of the compiled lineage that says how much of each animal there is; `contract.ts` is the whole. */

const element = z.object({
  id: z.string(),
  name: texts,
  share: z.number().describe('of the whole, in percent, both sides together'),
  within: z.string().optional(),
  source: z.string(),
});

const ofTaxon = z.object({
  taxon: z.string(),
  specimens: z
    .number()
    .describe('that have one of the elements; doubtful, composite and mixed ones stay out'),
  best: z.number().nullable().describe('percent of the whole that the most complete specimen has'),
  together: z.number().nullable().describe('percent that all of them have between them, at least'),
  elements: z.array(z.object({ element: z.string(), percent: z.number() })),
  scored: z.number().describe('characters of which one state is told'),
  scoredPercent: z.number().nullable().describe('of all characters; null where there are none'),
});

/** How much of each animal there is, in bones and in characters. */
export const completeness = z.object({
  elements: z.array(element),
  characters: z.number().describe('characters of the skeleton that could be scored'),
  taxa: z.array(ofTaxon),
});
export type CompiledCompleteness = z.output<typeof completeness>;
