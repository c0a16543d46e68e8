import { z } from 'zod';

/* The part of the compiled lineage that tells of change: trends, size, rates, and how well trees fit the order of finds. */

/** A stretch of time in which a branch of the reference tree must have lived, and nothing of it has been found. */
export const ghost = z.object({
  node: z.string().describe('of the reference tree: the younger end of the branch'),
  taxon: z.string().optional(),
  fromMa: z.number().describe('oldest find of its nearest relatives'),
  toMa: z.number().describe('oldest find under the branch itself'),
});

/** How well one tree agrees with the order of finds. */
export const congruence = z.object({
  tree: z.string(),
  reason: z
    .enum(['finds-missing', 'fewer-than-four', 'finds-of-one-age'])
    .optional()
    .describe('why there are no indices, as a code'),
  taxa: z.number().int(),
  gapMyr: z.number().nullable().describe('sum of the ghost ranges'),
  consistency: z.number().nullable().describe('share of forks, the root left out, in the order of finds'),
  completeness: z
    .number()
    .nullable()
    .describe('relative, percent; negative where gaps are longer than finds'),
  gapExcessRatio: z.number().nullable().describe('1 for the least gap that any tree implies, 0 for the most'),
  gapRatio: z.number().nullable().describe('least gap of any tree over the gap of this one'),
  permutations: z
    .object({ draws: z.number().int(), pValue: z.number(), meanGapMyr: z.number() })
    .optional()
    .describe('first finds dealt out anew among the taxa, seeded'),
});

export type CompiledGhost = z.output<typeof ghost>;
export type CompiledCongruence = z.output<typeof congruence>;
