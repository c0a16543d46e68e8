import { z } from 'zod';
import { restorationEnds } from './contract-shapes.ts';
import { templateSchema } from './templates.ts';

/* The part of the compiled lineage that is drawn; `contract.ts` is the whole. */

const drawnPoint = z.object({
  at: z.tuple([z.number(), z.number()]),
  basis: z
    .enum(['digitised', 'relatives'])
    .describe('seen on bone, or worked out from relatives on the tree'),
});

const ownDrawing = z
  .object({
    specimen: z.string(),
    by: z.string(),
    credit: z.string(),
    licence: z.string(),
    bone: z.string().describe('inert markup in units of the drawing'),
    restored: z.string(),
    accent: z.string(),
    place: z
      .tuple([z.number(), z.number(), z.number(), z.number(), z.number(), z.number()])
      .describe('matrix from the units of the drawing to the frame, as in a transform of SVG'),
  })
  .describe('drawn by hand; shown in place of the diagram');

/** The shape of a taxon as it is drawn. */
export const drawing = z.object({
  taxon: z.string(),
  trait: z.string(),
  template: z.string().optional().describe('of `templates`, that the points give its shape'),
  specimens: z.array(z.string()).describe('whose digitised points the shape is the mean of'),
  points: z
    .record(z.string(), drawnPoint)
    .describe(
      'landmark to place: x from 0 at the start of the measured line to 100 at its end, y down from the axis',
    ),
  limits: restorationEnds.optional(),
  elements: z.array(z.string()).describe('elements that at least one of the specimens preserves'),
  breaks: z
    .array(z.object({ landmark: z.string(), points: z.array(z.tuple([z.number(), z.number()])) }))
    .describe('where bone ends before each lost landmark'),
  broken: z.boolean().describe('the line starts at a break, not at its landmark'),
  mmPerUnit: z
    .number()
    .optional()
    .describe('millimetres in one unit of the frame, from the scale of its specimens'),
  own: ownDrawing.optional(),
});

const { invented: _invented, name: _name, ...templateShape } = templateSchema.shape;

/** A drawing template, without the words that only its authors need. */
export const template = z.object(templateShape);
