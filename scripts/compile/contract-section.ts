import { z } from 'zod';
import { interval, texts } from './contract-words.ts';

/* The part of the compiled lineage that is one sampled section: its levels, its individuals, and what the models say. */

const level = z.object({
  id: z.string(),
  heightM: z.number().describe('above the base of the section'),
  horizon: z.string().nullable(),
  ageMa: z.number().nullable().describe('on a straight line between the dated beds; null outside them'),
  ageSigmaMa: z.number().nullable().describe('one standard deviation, from the dates alone'),
  averagingYears: z.number().nullable().describe('years over which the bones of the level may have gathered'),
  averagingSource: z.string().nullable(),
  unworn: z.number().int().describe('individuals measured'),
  worn: z.number().int().describe('individuals that only say at least'),
  estimate: z.number().nullable().describe('mean of the level in mm; the geometric mean on a log scale'),
  interval: interval.describe('95% of the mean, by the spread shared over levels'),
  standardError: z.number().nullable().describe('on the scale of the model'),
  effectiveN: z.number().nullable().describe('unworn individuals that would say as much'),
  deviation: z.number().nullable().describe('among individuals of the level, on the scale of the model'),
  unwornMean: z.number().nullable().describe('mean of the unworn individuals alone, mm'),
  compared: z.boolean().describe('has a mean and an age, and takes part in the models'),
});

const individual = z.object({
  catalogNumber: z.string(),
  level: z.string(),
  wear: z.string(),
  valueMm: z.number(),
  atLeast: z.boolean().describe('the crown is worn: it was at least as high'),
});

const model = z.object({
  name: z.enum(['unbiased-walk', 'directional-walk', 'stasis']),
  logLikelihood: z.number(),
  parameters: z.number().int(),
  aicc: z.number().nullable(),
  weight: z.number().nullable().describe('share of the evidence among the three of this form'),
  variance: z
    .number()
    .describe(
      'of steps a million years for a walk, of levels about the optimum for stasis; scale of the model, squared',
    ),
  varianceOnBound: z.boolean().describe('the best variance is 0, a bound, and no finding'),
  varianceLimits: interval,
  meanStep: z.number().nullable().describe('a million years, on the scale of the model'),
  meanStepLimits: interval,
  level: z.number().nullable().describe('value at the oldest level, or the optimum, in mm'),
});

const rankTest = z.object({
  coefficient: z.number().nullable(),
  pTwoSided: z
    .number()
    .nullable()
    .describe('if levels came in no order; a walk without direction breaks that too'),
  method: z.enum(['exact', 'normal']),
});

const rate = z.object({ rate: z.number(), standardError: z.number(), interval: z.number() });

const change = z.object({
  from: z.string(),
  to: z.string(),
  intervalMyr: z.number(),
  intervalSigmaMyr: z.number().describe('from the dates alone'),
  darwins: rate.describe('natural logs a million years; never to be compared over unlike intervals'),
  haldanes: rate
    .nullable()
    .describe('pooled deviations of natural logs a generation; null without a sourced generation'),
});

const moved = z.object({
  sets: z.number().int().describe('sampled sets of dates that gave weights'),
  weights: z.array(
    z.object({
      name: model.shape.name,
      least: z.number(),
      greatest: z.number(),
      leads: z.number().int().describe('sets in which it has the greatest weight'),
      named: z.number().int().describe('sets in which it has enough to be named'),
    }),
  ),
});

const chanceSlopes = z.object({ middle: z.number(), range: interval.describe('95% of simulated sections') });

const rates = z.object({
  pairs: z
    .array(
      z.object({
        from: z.string(),
        to: z.string(),
        intervalMyr: z.number(),
        darwins: z.number().describe('without direction'),
        standardError: z.number(),
      }),
    )
    .describe('pairs of levels, the shortest interval first; evenly thinned where there are many'),
  total: z.number().int().describe('pairs of levels there are'),
  classes: z
    .array(
      z.object({
        fromMyr: z.number(),
        toMyr: z.number(),
        pairs: z.number().int(),
        middle: z.number().describe('median, darwins without direction'),
        least: z.number(),
        greatest: z.number(),
      }),
    )
    .describe('the same by the time that they span, the shortest first'),
  line: z
    .object({ slope: z.number(), intercept: z.number() })
    .describe('natural log of darwins against that of the interval in million years'),
  still: chanceSlopes.describe('the slope if nothing changed and samples only differed by chance'),
  walk: chanceSlopes
    .nullable()
    .describe(
      'the slope of a walk without direction, as fast as the one fitted; null where that takes no steps',
    ),
});

/** One sampled section. The two forms of the models count different numbers and are never compared with each other. */
export const section = z.object({
  id: z.string(),
  name: texts,
  taxon: z.string(),
  trait: z.string(),
  unit: z.literal('mm'),
  scale: z.enum(['plain', 'log', 'logit']),
  tooth: z.string(),
  institutionCode: z.string().nullable(),
  wear: z.array(z.object({ id: z.string(), crown: z.enum(['whole', 'worn']), name: texts })),
  generation: z
    .object({ years: z.number(), source: z.string() })
    .nullable()
    .describe('null without a source'),
  drawing: z
    .object({
      template: z.string(),
      crownLengthMm: z.number(),
      from: z.string().describe('landmark at the base of the crown'),
      to: z.string().describe('landmark at its tip'),
      source: z.string().nullable(),
    })
    .nullable(),
  rocks: z.array(z.object({ from: z.number(), to: z.number(), rock: z.string() })),
  beds: z
    .array(
      z.object({
        level: z.string(),
        horizon: z.string(),
        heightM: z.number(),
        ageMa: z.number(),
        sigmaMa: z.number(),
      }),
    )
    .describe('dated beds from the base up'),
  levels: z.array(level).describe('from the base up; beds without individuals among them'),
  individuals: z.array(individual),
  spread: z
    .object({ variance: z.number(), df: z.number() })
    .nullable()
    .describe('among individuals of a level, shared over levels, on the scale of the model'),
  models: z.object({ joint: z.array(model), steps: z.array(model) }),
  ranks: z.object({ kendall: rankTest, spearman: rankTest }).nullable(),
  span: z
    .object({ myr: z.number(), sigmaMyr: z.number().describe('from the dates alone') })
    .nullable()
    .describe('from the oldest level compared to the youngest'),
  moved: moved
    .nullable()
    .describe(
      'joint weights over sampled dates of the beds, each within its error; never mixed into the weights',
    ),
  rates: rates
    .nullable()
    .describe(
      'rates between all pairs of levels against their intervals; null but for a length on log scale',
    ),
  change: change
    .nullable()
    .describe('from the oldest level to the youngest; null but for a length on log scale'),
  steps: z.array(change).describe('from each level to the next'),
  verdict: z.object({
    code: z.enum(['rises', 'falls', 'wanders', 'stays', 'cannot-tell']),
    reason: z.string().nullable().describe('why one cannot tell, as a code'),
    model: z.string().nullable(),
    weight: z.number().nullable(),
    leastWeight: z.number().describe('that a model needs to be named'),
  }),
  sources: z.array(z.string()),
});
