import { z } from 'zod';
import { interval, texts } from './contract-words.ts';

/* The part of the compiled lineage that sets a trait against size. */

const slope = z.object({
  perLog: z.number().describe('on the scale of the series, for one natural log of size'),
  interval,
  pValue: z.number(),
  df: z.number().int(),
});

const point = z.object({
  taxon: z.string(),
  sizeMm: z.number(),
  estimate: z.number().nullable(),
  interval,
  atLeast: z.number().optional(),
  atMost: z.number().optional(),
});

const series = z.object({
  measurement: z.string().optional().describe('of a part; left out for the trait itself'),
  label: texts,
  slope: slope.optional().describe('on the reference tree'),
  reason: z.string().optional().describe('why there is no slope, as a code'),
  rows: z
    .array(
      z.object({
        tree: z.string(),
        dating: z.string(),
        slope: slope.optional(),
        reason: z.string().optional().describe('why there is no slope, as a code'),
      }),
    )
    .describe('on every tree and rule of dating, the reference first; none where nothing is fitted'),
  points: z.array(point).describe('animals with a size, measured or bounded, in the unit of the series'),
  line: z
    .array(z.object({ sizeMm: z.number(), median: z.number(), interval }))
    .describe('fitted line in the unit of the series'),
});

/** A trait against its declared size, and both lengths of a ratio likewise. */
export const size = z.object({
  measurement: z.string(),
  label: texts,
  verdict: z
    .enum(['larger', 'smaller', 'cannot-tell'])
    .describe('what larger animals have: the reference leaves 0 out, and every row has its sign'),
  reason: z.string().optional(),
  trait: series,
  parts: z.array(
    series.extend({
      pace: z
        .enum(['faster', 'slower', 'cannot-tell'])
        .describe('than size itself: the reference leaves a slope of 1 out, and every row lies on its side'),
    }),
  ),
  sizeless: z.array(z.string()).describe('animals with a value, and no size'),
});

export type CompiledSize = z.output<typeof size>;
