import { z } from 'zod';
import { templateSchema } from './templates.ts';
import { horizon, reference, specimen, taxon } from './contract-records.ts';
import { interval, status, texts } from './contract-words.ts';

/*
 * The compiled lineage: the one value that pages, downloads and `compute` read.
 * Version rule: a field may be added at any time and readers ignore what they do not know; a field that is
 * renamed, removed, or changes its meaning or unit makes the number after the slash go up.
 * Numbers are in the trait's own unit, ages in Ma, lengths in mm; absent is null, never NaN.
 */

export { interval, status, texts };

const treeNode = z.object({
  id: z.string(),
  parent: z.string().nullable(),
  ageMa: z.number(),
  taxon: z.string().optional(),
});

const tree = z.object({
  id: z.string(),
  reference: z.boolean(),
  source: z.string().optional(),
  dating: z.string(),
  nodes: z.array(treeNode),
});

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
  asymptote: z.number().optional().describe('reached only if the lost part had no end'),
  specimen: z.string(),
  probability: z
    .number()
    .optional()
    .describe('how probable relatives find it; under 0.001 both are to be shown'),
  working: limitWorking.optional(),
});

const relative = z.object({ taxon: z.string(), weight: z.number() });

const value = z.object({
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
      over: z.string().describe('how many trees, rules of dating and sets of ages'),
    })
    .optional(),
  reason: z.string().optional().describe('why it is unknown, as a code'),
});

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

const trait = z.object({
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
});

const drawnPoint = z.object({
  at: z.tuple([z.number(), z.number()]),
  basis: z
    .enum(['digitised', 'relatives'])
    .describe('seen on bone, or worked out from relatives on the tree'),
});

const drawing = z.object({
  taxon: z.string(),
  trait: z.string(),
  template: z.string().optional().describe('of `templates`, that the points give its shape'),
  specimens: z.array(z.string()).describe('whose digitised points the shape is the mean of'),
  points: z
    .record(z.string(), drawnPoint)
    .describe(
      'landmark to place: x from 0 at the start of the measured line to 100 at its end, y down from the axis',
    ),
  elements: z.array(z.string()).describe('elements that at least one of the specimens preserves'),
  breaks: z
    .array(z.object({ landmark: z.string(), points: z.array(z.tuple([z.number(), z.number()])) }))
    .describe('where bone ends before each lost landmark'),
  broken: z.boolean().describe('the line starts at a break, not at its landmark'),
});

const { invented: _invented, name: _name, ...templateShape } = templateSchema.shape;

/** A drawing template, without the words that only its authors need. */
const template = z.object(templateShape);

const axisChoice = {
  from: z.string(),
  to: z.string(),
};

/** What is measured on a specimen and how, for those who measure the next one. */
const scheme = z.object({
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

const chartUnit = z.object({
  id: z.string(),
  rank: z.enum(['period', 'epoch', 'stage']),
  name: texts,
  from: z.number(),
  to: z.number(),
});

/** The whole compiled lineage. `compute` prints it and schemas/compiled.json describes it. */
export const compiledLineage = z.object({
  schema: z.literal('lineament.compiled/1'),
  lineage: z.string(),
  contentDigest: z.string(),
  resultDigest: z.string(),
  about: z.object({
    title: texts,
    question: texts,
    invented: z.boolean(),
    languages: z.array(z.string()).min(1),
    focus: z.string().describe('the trait that the pages open with'),
    edition: z.object({ number: z.number(), date: z.string(), status: z.string() }),
    credits: z.array(z.string()),
    licence: z.string(),
    contact: z.string().optional(),
    preview: z
      .boolean()
      .optional()
      .describe('true in a preview: its pages are stamped, and it is not for publication'),
    sensitive: z.array(z.string()).optional().describe('human remains, or culturally sensitive material'),
  }),
  chart: z.object({ version: z.string(), citation: z.string(), units: z.array(chartUnit) }),
  horizons: z.array(horizon),
  taxa: z.array(taxon),
  specimens: z.array(specimen),
  references: z.array(reference),
  glossary: z.array(z.object({ id: z.string(), name: texts, meaning: texts })).optional(),
  trees: z.array(tree),
  traits: z.array(trait),
  drawings: z.array(drawing),
  templates: z.array(template).optional(),
  scheme: scheme.optional(),
});

export type Texts = z.output<typeof texts>;
export type Interval = z.output<typeof interval>;
export type Status = z.output<typeof status>;
export type CompiledLineage = z.output<typeof compiledLineage>;
export type CompiledTaxon = z.output<typeof taxon>;
export type CompiledSpecimen = z.output<typeof specimen>;
export type CompiledTree = z.output<typeof tree>;
export type CompiledTrait = z.output<typeof trait>;
export type CompiledScheme = z.output<typeof scheme>;
export type CompiledTemplate = z.output<typeof template>;
export type CompiledDrawing = z.output<typeof drawing>;
export type CompiledValue = z.output<typeof value>;
