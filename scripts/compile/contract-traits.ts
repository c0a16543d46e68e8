import { z } from 'zod';
import { statement } from './contract-statements.ts';
import { interval, texts } from './contract-words.ts';
import { size } from './contract-size.ts';
import { rates, trend } from './contract-trend.ts';
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

const model = z.object({
  name: z.string(),
  tree: z.string(),
  seed: z.number().int().describe('of the random numbers, which only several limits need'),
  df: z.number().describe('degrees of freedom of the rate'),
  rateMedian: z.number().nullable(),
  rateReml: z.number().nullable(),
  logLikelihood: z.number().nullable().describe('the largest, rate, mean and slope at their best'),
  slope: z
    .object({ median: z.number(), interval })
    .optional()
    .describe('of a trend, scale of the model, per million years'),
  limits: z
    .object({
      method: z.enum(['none', 'quadrature', 'sampling']),
      reported: z
        .boolean()
        .describe('false where sampling did not settle: estimates then stand without limits'),
      splitRHat: z.number().optional(),
      effectiveSize: z.number().optional(),
    })
    .describe('how limits of broken specimens entered the estimates'),
  compared: z.array(comparedModel).describe('by largest likelihood; the loser stands beside the one used'),
});

const twig = z.object({
  taxon: z.string(),
  specimen: z.string(),
  atLeast: z.number().optional(),
  atMost: z.number().optional(),
  variance: z.number().describe('spread within a taxon and the squared error of the limit'),
});

const sensitivity = z.object({
  name: z.enum(['lambda', 'pull']),
  parameter: z.number().describe('Pagel’s lambda, or the pull to an optimum as a share a million years'),
  logLikelihood: z.number(),
  parameters: z.number().int(),
  aicc: z.number().nullable(),
  onBound: z
    .enum(['lowest', 'highest'])
    .optional()
    .describe('the parameter lies on the end of its range: no finding'),
});

const repeats = z.object({
  from: z.enum(['landmarks', 'callipers', 'literature']),
  measurement: z
    .string()
    .optional()
    .describe('left out where the trait itself was read again, from landmarks'),
  specimens: z.number().int().describe('read more than once'),
  within: z.number().describe('variance of one reading'),
  df: z.number().int(),
  repeatability: z
    .number()
    .nullable()
    .describe('share of the variance of a reading that lies among specimens'),
  percentError: z.number().nullable(),
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
  repeats: z.array(repeats).describe('measurement error, where something was read again'),
  ages: z
    .array(
      z.object({ tree: z.string(), ageMa: z.array(z.number()).describe('of its nodes, in their order') }),
    )
    .optional()
    .describe('trees, where the finds that carry this trait date them otherwise than `trees` says'),
  model: model.nullable(),
  sensitivity: z
    .array(sensitivity)
    .describe('models that are only compared; no printed value comes from them'),
  twigs: z
    .array(twig)
    .describe(
      'limits as they entered the estimates: bare ends, without their error, on the scale of the model',
    ),
  values: z.array(value),
  nodes: z.array(z.object({ node: z.string(), median: z.number(), interval })),
  leaveOneOut: z.array(leaveOneOut),
  statements: z.array(statement).describe('what pages say of the trait, free of any language'),
  trend: trend.optional(),
  size: size.optional(),
  rates: rates.optional().describe('for lengths and sizes on log scale alone'),
});
