import { z } from 'zod';
import { day, file, id, idOf, line, reference, rights, sources, texts } from './words.ts';

const point = z.tuple([z.number(), z.number()]);
const breakPoint = z.union([point, z.tuple([z.number(), z.number(), z.number()])]);

const measured = z
  .strictObject({
    value: z
      .number()
      .optional()
      .meta({ description: 'one reading; give repeats where there are several', examples: [240.1] }),
    repeats: z
      .array(z.number())
      .min(2)
      .optional()
      .meta({ description: 'the same distance measured again', examples: [[240.1, 240.3, 239.8]] }),
    unit: z
      .enum(['mm', 'cm', 'm', 'in', 'degrees', 'count'])
      .meta({ description: 'what the numbers are in' }),
    approximate: z
      .number()
      .positive()
      .optional()
      .meta({
        description: "the author's plus or minus (95%), when the value is only 'about'",
        examples: [6],
      }),
    toBreak: idOf('landmark')
      .optional()
      .meta({ description: 'the lost landmark: measured up to where the bone breaks' }),
    by: line.optional().meta({ description: 'who measured', examples: ['A. Reed'] }),
    method: line.optional().meta({ description: 'how it was measured', examples: ['calliper'] }),
    repeatOf: z
      .enum(['same-session', 'new-session', 'new-observer'])
      .optional()
      .meta({ description: 'what changed between repeats' }),
    source: reference.optional(),
    preferred: z.boolean().optional().meta({ description: 'true on the one to use where records disagree' }),
  })
  .meta({ description: 'a value, or repeats, with its unit' });

const landmarks = z.strictObject({
  view: idOf('view'),
  sheet: file,
  picture: file.optional(),
  mirrored: z.boolean().optional().meta({
    description:
      'digitised from the other side, the picture turned over so that it faces like the rest; left and right stay those of the animal, and pairs change names when it is drawn',
  }),
  mmPerUnit: z
    .number()
    .optional()
    .meta({
      description: 'millimetres in one unit of the sheet; 1 when the sheet is in mm',
      examples: [0.1],
    }),
  scale: z
    .strictObject({
      from: point.meta({ description: 'one end of the bar, in the units of the sheet' }),
      to: point.meta({ description: 'its other end' }),
      mm: z.number().meta({ description: 'length of the bar, mm', examples: [50] }),
    })
    .optional()
    .meta({ description: 'two ends of the scale bar in the picture, and its length' }),
});

const lost = z.strictObject({
  landmark: idOf('landmark'),
  break: z
    .array(breakPoint)
    .min(1)
    .optional()
    .meta({
      description:
        'points along the break, in the units of the sheet: x and y in a picture, x, y and z in a scan',
      examples: [
        [
          [12.4, 88.0],
          [11.8, 92.5],
        ],
      ],
    }),
  axisWithin: z
    .number()
    .nonnegative()
    .max(45)
    .optional()
    .meta({ description: 'how far the axis may be off, degrees', examples: [6] }),
  atMost: z
    .number()
    .positive()
    .optional()
    .meta({ description: 'no more than this can be lost, mm', examples: [60] }),
});

const filler = z.union([
  idOf('landmark'),
  z.strictObject({
    landmark: idOf('landmark'),
    treatment: z.enum(['excluded', 'taken-as-found']).meta({ description: 'what was done about it' }),
    error: z
      .number()
      .positive()
      .optional()
      .meta({ description: 'plus or minus (95%) in mm', examples: [2.5] }),
  }),
]);

const distortion = z.strictObject({
  kind: z
    .enum(['compressed', 'sheared', 'bent', 'cracked', 'crushed'])
    .meta({ description: 'what the rock did to the bone' }),
  affects: z
    .array(idOf('landmark'))
    .min(1)
    .meta({ description: 'landmarks that are no longer where they were' }),
  treatment: z
    .enum(['excluded', 'corrected', 'taken-as-found'])
    .optional()
    .meta({ description: 'what was done about it' }),
  method: line
    .optional()
    .meta({ description: 'how it was corrected', examples: ['mirrored about the midline'] }),
  error: z
    .number()
    .positive()
    .optional()
    .meta({ description: 'plus or minus (95%) in mm', examples: [2.5] }),
});

const picture = z.strictObject({
  file,
  alt: texts.optional().meta({ description: 'what a person who cannot see it needs to know' }),
  drawnFrom: z
    .enum(['specimen', 'photograph', 'diagram'])
    .optional()
    .meta({ description: 'what a drawing was made after' }),
  rights: rights.optional(),
});

const ownDrawing = z
  .strictObject({
    file: file.meta({ description: 'an SVG in the folder drawings', examples: ['drawings/skull.svg'] }),
    by: line.meta({ description: 'who drew it', examples: ['A. Reed'] }),
    rights: rights.optional(),
  })
  .meta({
    description:
      'a drawing by hand that is shown in place of the diagram: groups with the ids bone, restored, accent, landmarks',
  });

const identification = z.strictObject({
  qualifier: z
    .enum(['none', 'cf.', 'aff.', '?'])
    .default('none')
    .meta({ description: 'cf., aff. and ? stay out of means unless admitted' }),
  by: line.optional().meta({ description: 'who identified it', examples: ['A. Reed'] }),
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
    identification: identification
      .optional()
      .meta({ description: 'how certain the name is, and what it rests on' }),
    institutionCode: line.optional().meta({ description: 'where it is kept', examples: ['OBM'] }),
    catalogNumber: line.optional().meta({ description: 'quote numbers', examples: ['1183'] }),
    ownerInstitutionCode: line
      .optional()
      .meta({ description: 'who owns it, where that is another', examples: ['LWRM'] }),
    typeStatus: line
      .optional()
      .meta({ description: 'what the name of its taxon rests on it as', examples: ['holotype'] }),
    basisOfRecord: z
      .enum(['FossilSpecimen', 'PreservedSpecimen', 'MaterialCitation'])
      .default('FossilSpecimen')
      .meta({ description: 'fossil, collected animal, or known from the literature' }),
    preparations: preparation,
    lifeStage: z
      .enum(['adult', 'subadult', 'juvenile', 'unknown'])
      .default('unknown')
      .meta({ description: 'the young stay out of means unless admitted' }),
    sex: z
      .enum(['male', 'female', 'unknown'])
      .default('unknown')
      .meta({ description: 'spread is worked out by sex where each has three or more' }),
    association: z.enum(['individual', 'associated', 'composite', 'lot']).default('individual').meta({
      description:
        'individual: one animal; associated: most likely one; composite: parts of several; lot: several under one number',
    }),
    pathology: texts.optional(),
    horizon: idOf('horizon').optional(),
    elements: z
      .array(
        z.strictObject({
          element: line.meta({ description: 'the bone or tooth', examples: ['cranium'] }),
          side: z
            .enum(['left', 'right', 'both', 'middle'])
            .optional()
            .meta({ description: 'side of the animal' }),
          preserved: z
            .number()
            .min(0)
            .max(1)
            .default(1)
            .meta({ description: 'share that is there, 0 to 1', examples: [0.8] }),
        }),
      )
      .default([])
      .meta({ description: 'bones and teeth that are there, and how much of each' }),
    lost: z.array(lost).default([]).meta({ description: 'landmarks that broke away, and the break' }),
    landmarks: z
      .union([landmarks.transform((one) => [one]), z.array(landmarks)])
      .default([])
      .meta({ description: 'where its digitised points are: one record a view' }),
    measurements: z
      .record(z.string(), z.union([measured, z.array(measured).min(1)]))
      .default({})
      .meta({
        description: 'measurement id to a value, or to several records of which one is preferred',
        examples: [{ 'basal-length': { value: 402, unit: 'mm' } }],
      }),
    filler: z.array(filler).default([]).meta({ description: 'landmarks that lie on plaster or filler' }),
    distortion: z
      .union([distortion.transform((one) => [one]), z.array(distortion)])
      .default([])
      .meta({ description: 'bone that is no longer in shape' }),
    admitted: texts
      .optional()
      .meta({ description: 'why a young, composite, sick or doubtful specimen counts after all' }),
    leftOut: texts.optional().meta({ description: 'why a specimen that would count does not' }),
    locality: z
      .strictObject({
        name: line
          .optional()
          .meta({ description: 'district or county, never the spot', examples: ['Lower Withy district'] }),
        public: z.boolean().meta({ description: 'whether even this may be published' }),
      })
      .optional()
      .meta({ description: 'where it was found, in words; exact places stand in private.yaml' }),
    pictures: z.array(picture).default([]).meta({ description: 'photographs and drawings of it' }),
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
