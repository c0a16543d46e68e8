import { z } from 'zod';
import { interval, status, texts } from './contract-words.ts';

/* The part of the compiled lineage that is values, taxon by taxon; `contract.ts` is the whole. */

const limitWorking = z.object({
  part: z.object({ measurement: z.string(), mm: z.number() }).optional(),
  whole: z.object({ measurement: z.string(), mm: z.number() }).optional(),
  rows: z
    .array(z.object({ lostMm: z.number(), value: z.number() }))
    .describe('what it would read with so much restored'),
});

const limits = z.object({
  atLeast: z.number().optional().describe('safe 95% end, rounded outward'),
  atMost: z.number().optional(),
  bare: z
    .object({ atLeast: z.number().optional(), atMost: z.number().optional(), error: z.number() })
    .optional()
    .describe('the ends before their error, and the standard error'),
  asymptote: z.number().optional().describe('reached only if the lost part had no end'),
  specimen: z.string(),
  probability: z
    .number()
    .optional()
    .describe('how probable relatives find it; under 0.001 both are to be shown'),
  working: limitWorking.optional(),
});

const relative = z.object({ taxon: z.string(), weight: z.number() });

/** The value of one taxon for one trait. */
export const value = z.object({
  taxon: z.string(),
  status,
  estimate: z.number().nullable().describe('mean if measured, median if inferred, else null'),
  interval,
  level: z.number().describe('0.95'),
  method: z.string(),
  df: z.number().nullable(),
  standardError: z.number().nullable().describe('on the scale of the model'),
  n: z.number().int().describe('eligible specimens that yield the value'),
  specimens: z.array(z.string()),
  leftOut: z.array(
    z.object({
      specimen: z.string(),
      reason: z
        .string()
        .describe('young, composite, lot, sick, doubtful, model, same-animal or author, as a code'),
      text: texts.optional().describe('in the author’s words, where they gave some'),
    }),
  ),
  facets: z.array(z.string()).describe('fossil or living, approximate, cast, mirrored, literature'),
  placedMa: z.number().nullable().describe('age at which the mark stands'),
  limits: limits.optional(),
  conditional: z.object({ median: z.number(), interval }).optional(),
  relatives: z.array(relative).optional(),
  othersWeight: z.number().optional(),
  span: z
    .object({
      middle: interval,
      interval,
      over: z
        .object({ trees: z.number().int(), rules: z.number().int(), ageSets: z.number().int() })
        .describe('how many trees, rules of dating and sets of ages'),
    })
    .optional(),
  reason: z.string().optional().describe('why it is unknown, as a code'),
});
