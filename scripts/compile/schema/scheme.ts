import { z } from 'zod';
import { file, id, idOf, line, reference, texts } from './words.ts';

const view = z.strictObject({
  id,
  name: texts.optional(),
  dimensions: z
    .union([z.literal(2), z.literal(3)])
    .default(2)
    .meta({ description: '2 for pictures, 3 for scans' }),
  template: idOf('template')
    .optional()
    .meta({
      description: 'the drawing that the landmarks of this view give its shape, from the folder templates',
      examples: ['mammal-skull-left'],
    }),
});

const ends = { from: idOf('landmark'), to: idOf('landmark') };

const axis = z
  .strictObject({
    id,
    ...ends,
    name: texts.optional(),
    else: z
      .array(
        z.strictObject({
          ...ends,
          turned: z
            .number()
            .optional()
            .meta({
              description:
                'mean angle from the main axis to this one in degrees, clockwise in the picture, on skulls with both',
              examples: [-4.5],
            }),
        }),
      )
      .optional()
      .meta({ description: 'axes to use when a landmark of the main one is lost, best first' }),
  })
  .meta({ description: 'a direction along which lengths are measured' });

const landmark = z.strictObject({
  id,
  name: texts,
  bone: line.optional().meta({ description: 'the bone that it is on', examples: ['premaxilla'] }),
  views: z
    .array(idOf('view'))
    .min(1)
    .optional()
    .meta({ description: 'views that show it; left out means all' }),
  definition: texts.optional().meta({ description: 'how to find the point, so that someone else can' }),
  source: reference.optional(),
  side: z.enum(['left', 'right', 'middle']).optional().meta({ description: 'side of the animal' }),
  pair: idOf('landmark').optional().meta({ description: 'the same point on the other side' }),
});

const measurement = z
  .strictObject({
    id,
    name: texts.optional(),
    from: idOf('landmark').optional(),
    to: idOf('landmark').optional(),
    along: idOf('axis').optional().meta({ description: 'measured along this axis, not straight' }),
    through: z
      .array(idOf('landmark'))
      .optional()
      .meta({ description: 'points on the way, for a length along a curve' }),
    angle: z
      .tuple([idOf('landmark'), idOf('landmark'), idOf('landmark')])
      .optional()
      .meta({ description: 'an angle at the middle one of three landmarks' }),
    count: texts.optional().meta({ description: 'what is counted' }),
    definition: texts.optional(),
    source: reference.optional(),
  })
  .meta({ description: 'a length between two landmarks, an angle, or a count' });

const unit = z
  .enum(['mm', 'cm', 'm', 'in', 'degrees', 'count'])
  .meta({ description: 'what the numbers are in' });

const column = z.union([
  z.enum(['specimen', 'catalogNumber', 'institutionCode', 'taxon', 'horizon', 'sex', 'lifeStage', 'ignore']),
  z
    .strictObject({ measurement: idOf('measurement'), unit })
    .meta({ description: 'a measurement and its unit' }),
  z
    .strictObject({
      toBreak: idOf('measurement').meta({ description: 'the measurement that was taken up to a break' }),
    })
    .meta({ description: 'each cell names the landmark that is lost, or is empty for a whole length' }),
  z
    .strictObject({
      approximate: idOf('measurement').meta({ description: 'the measurement that is only about right' }),
      unit: unit.optional().meta({ description: 'left out, it is the unit of the measurement’s own column' }),
    })
    .meta({ description: 'each cell holds a 95% plus or minus, or is empty for an exact value' }),
]);

const element = z
  .strictObject({
    id: line.meta({ description: 'as specimens name it under `elements`', examples: ['cranium'] }),
    name: texts,
    share: z
      .number()
      .positive()
      .meta({ description: 'its share of the whole, both sides together, in any unit', examples: [75] }),
    within: line
      .optional()
      .meta({ description: 'the element that this one is a part of', examples: ['cranium'] }),
    source: reference.meta({ description: 'who says that it is so much of the whole' }),
  })
  .meta({ description: 'a bone or tooth whose completeness is reckoned' });

const sheet = z
  .strictObject({
    file,
    rows: z
      .enum(['measurements', 'specimens'])
      .default('measurements')
      .meta({ description: 'specimens: each row is a specimen that is recorded nowhere else' }),
    institutionCode: line
      .optional()
      .meta({ description: 'where all specimens of the sheet are kept', examples: ['OBM'] }),
    taxa: z
      .record(z.string(), idOf('taxon'))
      .optional()
      .meta({
        description: 'names as the sheet writes them, to taxon ids',
        examples: [{ 'L. fracta': 'limnorhina-fracta' }],
      }),
    columns: z.record(z.string(), column).meta({
      description: 'header of each column to what it holds',
      examples: [{ 'BL (mm)': { measurement: 'basal-length', unit: 'mm' } }],
    }),
    by: line.optional().meta({ description: 'who measured', examples: ['A. Reed'] }),
    method: line.optional().meta({ description: 'how it was measured', examples: ['calliper'] }),
    source: reference.optional(),
    notMeasured: z
      .array(z.string())
      .optional()
      .meta({ description: 'words that mean not measured', examples: [['n/a']] }),
  })
  .meta({ description: 'how a table kept in another form is read' });

/** scheme.yaml: views, axes, landmarks and measurements, each defined once. */
export const scheme = z
  .strictObject({
    views: z.array(view).default([]).meta({ description: 'sides that pictures and scans are taken from' }),
    axes: z.array(axis).default([]).meta({ description: 'directions along which lengths are measured' }),
    landmarks: z
      .array(landmark)
      .default([])
      .meta({ description: 'points that can be found again on every skull, tooth or shell' }),
    measurements: z
      .array(measurement)
      .default([])
      .meta({ description: 'lengths, angles and counts, each defined once' }),
    elements: z.array(element).default([]).meta({
      description: 'what completeness is reckoned over: elements and the share of the whole that each is',
    }),
    sheets: z.array(sheet).default([]).meta({ description: 'how tables kept in another form are read' }),
  })
  .meta({ title: 'scheme.yaml', description: 'landmarks, axes, views and measurements' });

export type Scheme = z.output<typeof scheme>;
export type Landmark = Scheme['landmarks'][number];
export type Measurement = Scheme['measurements'][number];
export type Axis = Scheme['axes'][number];
export type SheetMapping = Scheme['sheets'][number];
export type LengthUnit = z.output<typeof unit>;
