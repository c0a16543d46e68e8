import { z } from 'zod';
import { day, file, id, idOf, line, rights, sources, texts } from './words.ts';

const point = z.tuple([z.number(), z.number()]);

const measured = z
  .strictObject({
    value: z.number().optional(),
    repeats: z
      .array(z.number())
      .min(2)
      .optional()
      .meta({ description: 'the same distance measured again', examples: [[240.1, 240.3, 239.8]] }),
    unit: z.enum(['mm', 'cm', 'm', 'in', 'degrees', 'count']),
    approximate: z
      .number()
      .positive()
      .optional()
      .meta({ description: "the author's plus or minus (95%), when the value is only 'about'" }),
    toBreak: idOf('landmark')
      .optional()
      .meta({ description: 'the lost landmark: measured up to where the bone breaks' }),
    by: line.optional(),
    method: line.optional().meta({ examples: ['calliper'] }),
    repeatOf: z
      .enum(['same-session', 'new-session', 'new-observer'])
      .optional()
      .meta({ description: 'what changed between repeats' }),
    source: line.optional().meta({ description: 'key of the reference it was taken from' }),
    preferred: z.boolean().optional().meta({ description: 'true on the one to use where records disagree' }),
  })
  .meta({ description: 'a value, or repeats, with its unit' });

const landmarks = z.strictObject({
  view: idOf('view'),
  sheet: file,
  picture: file.optional(),
  mirrored: z.boolean().optional().meta({
    description: 'digitised from the other side, the picture turned over so that it faces like the rest',
  }),
  mmPerUnit: z
    .number()
    .optional()
    .meta({ description: 'millimetres in one unit of the sheet; 1 when the sheet is in mm' }),
  scale: z
    .strictObject({ from: point, to: point, mm: z.number() })
    .optional()
    .meta({ description: 'two ends of the scale bar in the picture, and its length' }),
});

const lost = z.strictObject({
  landmark: idOf('landmark'),
  break: z
    .array(point)
    .min(1)
    .optional()
    .meta({ description: 'points along the break, in the units of the sheet' }),
  axisWithin: z
    .number()
    .nonnegative()
    .max(45)
    .optional()
    .meta({ description: 'how far the axis may be off, degrees' }),
  atMost: z.number().positive().optional().meta({ description: 'no more than this can be lost, mm' }),
});

const filler = z.union([
  idOf('landmark'),
  z.strictObject({
    landmark: idOf('landmark'),
    treatment: z.enum(['excluded', 'taken-as-found']),
    error: z.number().positive().optional().meta({ description: 'plus or minus (95%) in mm' }),
  }),
]);

const distortion = z.strictObject({
  kind: z.enum(['compressed', 'sheared', 'bent', 'cracked', 'crushed']),
  affects: z.array(idOf('landmark')).min(1),
  treatment: z.enum(['excluded', 'corrected', 'taken-as-found']).optional(),
  method: line.optional(),
  error: z.number().positive().optional().meta({ description: 'plus or minus (95%) in mm' }),
});

const picture = z.strictObject({
  file,
  alt: texts.optional().meta({ description: 'what a person who cannot see it needs to know' }),
  drawnFrom: z.enum(['specimen', 'photograph', 'diagram']).optional(),
  rights: rights.optional(),
});

const ownDrawing = z
  .strictObject({
    file: file.meta({ description: 'an SVG in the folder drawings', examples: ['drawings/skull.svg'] }),
    by: line.meta({ description: 'who drew it' }),
    rights: rights.optional(),
  })
  .meta({
    description:
      'a drawing by hand that is shown in place of the diagram: groups with the ids bone, restored, accent, landmarks',
  });

const identification = z.strictObject({
  qualifier: z.enum(['none', 'cf.', 'aff.', '?']).default('none'),
  by: line.optional(),
  date: day.optional(),
  on: z.array(line).optional().meta({ description: 'the bones or features it rests on' }),
  former: z.array(line).optional().meta({ description: 'names it went under before' }),
});

const preparation = z
  .string()
  .regex(/^(fossil|skeleton|mould|model|cast of: \S+)$/, { error: 'not-a-preparation' })
  .default('fossil')
  .meta({
    description: "fossil, skeleton, mould, model, or 'cast of: ID'",
    examples: ['fossil', 'cast of: obm-1183'],
  });

/** One specimen of specimens.yaml. */
export const specimen = z
  .strictObject({
    id,
    taxon: idOf('taxon'),
    identification: identification.optional(),
    institutionCode: line.optional(),
    catalogNumber: line.optional().meta({ description: 'quote numbers', examples: ['1183'] }),
    ownerInstitutionCode: line.optional(),
    typeStatus: line.optional().meta({ examples: ['holotype'] }),
    basisOfRecord: z
      .enum(['FossilSpecimen', 'PreservedSpecimen', 'MaterialCitation'])
      .default('FossilSpecimen'),
    preparations: preparation,
    lifeStage: z.enum(['adult', 'subadult', 'juvenile', 'unknown']).default('unknown'),
    sex: z.enum(['male', 'female', 'unknown']).default('unknown'),
    association: z.enum(['individual', 'associated', 'composite', 'lot']).default('individual'),
    pathology: texts.optional(),
    horizon: idOf('horizon').optional(),
    elements: z
      .array(
        z.strictObject({
          element: line,
          side: z.enum(['left', 'right', 'both', 'middle']).optional(),
          preserved: z.number().min(0).max(1).default(1),
        }),
      )
      .default([]),
    lost: z.array(lost).default([]),
    landmarks: z.union([landmarks.transform((one) => [one]), z.array(landmarks)]).default([]),
    measurements: z.record(z.string(), z.union([measured, z.array(measured).min(1)])).default({}),
    filler: z.array(filler).default([]).meta({ description: 'landmarks that lie on plaster or filler' }),
    distortion: z.union([distortion.transform((one) => [one]), z.array(distortion)]).default([]),
    admitted: texts
      .optional()
      .meta({ description: 'why a young, composite, sick or doubtful specimen counts after all' }),
    leftOut: texts.optional().meta({ description: 'why a specimen that would count does not' }),
    locality: z.strictObject({ name: line.optional(), public: z.boolean() }).optional(),
    pictures: z.array(picture).default([]),
    drawing: ownDrawing.optional(),
    rights: rights.optional(),
    note: texts.optional(),
    sources: sources.optional(),
  })
  .meta({ description: 'one specimen, as its label and the preparator know it' });

/** specimens.yaml: the bones. */
export const specimens = z.array(specimen).meta({ title: 'specimens.yaml', description: 'the bones' });

export type Specimen = z.output<typeof specimen>;
export type MeasuredRecord = z.output<typeof measured>;
export type LandmarkSource = Specimen['landmarks'][number];
export type LostLandmark = z.output<typeof lost>;
