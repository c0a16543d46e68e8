import { z } from 'zod';
import { interval, texts } from './contract-words.ts';
import { trend } from './contract-trend.ts';
import { value } from './contract-values.ts';

/* The part of the compiled lineage that is traits and what was computed of them; `contract.ts` is the whole. */

const leaveOneOut = z.object({
  taxon: z.string(),
  observed: z.number(),
  median: z.number(),
  interval,
  miss: z.number().describe('observed less median'),
  inside: z.boolean(),
});

const comparedModel = z.object({
  name: z.string(),
  logLikelihood: z.number(),
  parameters: z.number().int(),
  aicc: z.number().nullable(),
  note: z.string().optional(),
});

/** A trait: what was measured, the model, and a value for every taxon. */
export const trait = z.object({
  id: z.string(),
  unit: z.string(),
  scale: z.enum(['plain', 'log', 'logit']),
  kind: z.enum(['ratio', 'length', 'angle', 'count', 'size']),
  label: texts,
  meaning: texts,
  why: texts.optional(),
  marks: z.array(z.object({ at: z.number(), text: texts })),
  accent: z.string().optional(),
  measured: z
    .object({ from: z.string(), to: z.string(), end: z.string().optional() })
    .optional()
    .describe('landmarks of the measured line: zero, reading, and for a ratio the hundred'),
  pooled: z.object({ variance: z.number(), df: z.number() }).nullable(),
  model: z
    .object({
      name: z.string(),
      tree: z.string(),
      rateMedian: z.number().nullable(),
      rateReml: z.number().nullable(),
      logLikelihood: z.number().nullable(),
      compared: z.array(comparedModel),
    })
    .nullable(),
  values: z.array(value),
  nodes: z.array(z.object({ node: z.string(), median: z.number(), interval })),
  leaveOneOut: z.array(leaveOneOut),
  trend: trend.optional(),
});
