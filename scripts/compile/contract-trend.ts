import { z } from 'zod';
import { interval } from './contract-words.ts';

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

const slope = z.object({
  perMyr: z.number().describe('on the scale of the trait: natural log for log, log-odds for logit'),
  interval,
  pValue: z.number().describe('two-sided, of so steep a slope if there is none'),
  df: z.number().int(),
});

const trendRow = z.object({
  tree: z.string(),
  dating: z.string(),
  slope: slope.optional(),
  reason: z.string().optional().describe('why there is no slope, as a code'),
  ages: z
    .object({
      sets: z.number().int().describe('sets of ages that could be dated, the reference among them'),
      rising: z.number().int(),
      falling: z.number().int(),
      perMyr: interval.describe('least and greatest slope over them'),
    })
    .describe('the slope over sampled ages'),
});

const linePoint = z.object({ at: z.number(), median: z.number(), interval });

/** What may be said of a trait's change in time, and what it rests on; the first row is the reference. */
export const trend = z.object({
  verdict: z.enum(['rises', 'falls', 'cannot-tell']),
  reason: z.string().optional().describe('why nothing can be told, as a code'),
  level: z.number(),
  taxa: z.number().int(),
  rows: z.array(trendRow),
  line: z
    .array(linePoint)
    .describe(
      'fitted line of the reference, `at` in Ma, in trait units, from the oldest taxon to the youngest',
    ),
  rank: z
    .object({ tau: z.number(), pValue: z.number(), draws: z.number().int() })
    .optional()
    .describe('Kendall’s tau with time, judged by simulation on the reference tree: a description'),
});

/** How fast a length changed, in darwins: natural logs a million years, never without the time it was measured over. */
export const rates = z.object({
  pairs: z
    .array(
      z.object({
        one: z.string(),
        other: z.string(),
        pathMyr: z.number().describe('time that parts them on the reference tree'),
        darwins: z.number().describe('without direction'),
        standardError: z.number(),
      }),
    )
    .describe('pairs of relatives whose paths share no branch'),
});

export type CompiledRates = z.output<typeof rates>;
export type CompiledTrend = z.output<typeof trend>;
export type CompiledGhost = z.output<typeof ghost>;
export type CompiledCongruence = z.output<typeof congruence>;
