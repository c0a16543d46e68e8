import { spreadOf } from '../../../analysis/geometry/spread.ts';
import type { PlanePoint } from '../../../analysis/geometry/index.ts';
import type { AnalysedLineage, AnalysedTrait } from '../analyse/lineage.ts';
import { measuredLine } from '../compose/measured-line.ts';
import type { CompiledDrawing, CompiledShapes, CompiledTrait, CompiledValue } from '../contract.ts';
import type { ResolvedSpecimen } from '../resolve/specimens.ts';
import { completeShape, type BasedPoint, type ValueAim } from './complete-shape.ts';
import type { MeasuredFrame } from './frame.ts';
import { composeShapes } from './node-shapes.ts';
import { relativesOn } from './relatives.ts';
import { findTaxonShape, type TaxonShape } from './taxon-shape.ts';

/** What pages draw skulls from: one shape a taxon, and the shapes along the reference tree. */
export interface DrawnLineage {
  drawings: CompiledDrawing[];
  shapes?: CompiledShapes;
}

/**
 * Shapes for the trait that the pages open with, if that trait is a share of a measured line and landmarks were digitised;
 * an empty list otherwise.
 */
export function drawTaxa(analysed: AnalysedLineage, traits: readonly CompiledTrait[]): DrawnLineage {
  const { lineage } = analysed;
  const focus = lineage.records.lineage?.value.focus;
  const trait = analysed.traits.find((each) => each.record.value.id === focus);
  const framing = trait && framingOf(trait, analysed);
  if (!trait || !framing) return { drawings: [] };
  const shapes = shapesOfTaxa(trait, framing, analysed);
  const tree = analysed.trees.find((each) => each.reference);
  const relatives = tree && relativesOn(tree, shapes, framing.frame.reading);
  const composed = traits.find(({ id }) => id === focus)!;
  const drawings = [...shapes].flatMap(([taxon, shape]): CompiledDrawing[] => {
    const aim = aimOf(composed.values.find((value) => value.taxon === taxon));
    const completed = completeShape(taxon, shape, { frame: framing.frame, relatives, aim });
    if (completed.points.size === 0) return [];
    const template = templateOf(shape.view, analysed);
    return [{ taxon, trait: composed.id, ...template, ...drawingOf(shape, completed) }];
  });
  const along = tree && relatives && composeShapes(tree, relatives, framing.frame, composed);
  const view = [...shapes.values()].find((shape) => shape.framed && !shape.broken)?.view;
  return {
    drawings,
    ...(along && view !== undefined && { shapes: { ...along, ...templateOf(view, analysed) } }),
  };
}

/** The shape of every taxon that has one, laid into the frame where its own points allow it. */
function shapesOfTaxa(
  trait: AnalysedTrait,
  { frame, axis }: Framing,
  { lineage }: AnalysedLineage,
): Map<string, TaxonShape> {
  const shapes = new Map<string, TaxonShape>();
  for (const { value } of lineage.records.taxa.records) {
    const specimens = drawable(value.id, trait, lineage.specimens);
    const shape = findTaxonShape(specimens, frame, axis, lineage.scheme);
    if (shape) shapes.set(value.id, shape);
  }
  return shapes;
}

/** What a drawing says of a completed shape: its points and limits, and what was found of it. */
function drawingOf(
  shape: TaxonShape,
  { points, limits }: ReturnType<typeof completeShape>,
): Omit<CompiledDrawing, 'taxon' | 'trait' | 'template'> {
  return {
    specimens: shape.specimens,
    points: Object.fromEntries([...points].map(([id, { at, basis }]) => [id, { at: pair(at), basis }])),
    ...(limits.length > 0 && {
      limits: limits.map(({ value, points: restored }) => ({
        value,
        points: Object.fromEntries([...restored].map(([id, at]) => [id, pair(at)])),
      })),
    }),
    elements: shape.elements,
    breaks: shape.framed
      ? shape.breaks.map(({ landmark, points: line }) => ({ landmark, points: line.map(pair) }))
      : [],
    broken: shape.broken,
    ...scaleOf(shape, points),
  };
}

function pair([x, y]: PlanePoint): [number, number] {
  return [x, y];
}

/** Where an unmeasured value may lie: between the ends that both its limits and its relatives allow. */
function aimOf(value: CompiledValue | undefined): ValueAim | undefined {
  if (value?.status === 'inferred') return aimFrom(value.estimate, value.interval, {});
  if (value?.status !== 'bounded' || !value.conditional) return undefined;
  return aimFrom(value.conditional.median, value.conditional.interval, value.limits ?? {});
}

function aimFrom(
  middle: number | null,
  [low, high]: CompiledValue['interval'],
  { atLeast = -Infinity, atMost = Infinity }: { atLeast?: number | undefined; atMost?: number | undefined },
): ValueAim | undefined {
  if (middle === null || low === null || high === null) return undefined;
  return { middle, ends: [Math.max(low, atLeast), Math.min(high, atMost)] };
}

/** The frame that drawings stand in, and the axis that their trait is measured along. */
interface Framing {
  readonly frame: MeasuredFrame;
  readonly axis: string | undefined;
}

function framingOf(trait: AnalysedTrait, { lineage }: AnalysedLineage): Framing | undefined {
  const line = measuredLine(trait.observed.kind, lineage.scheme);
  if (trait.observed.kind.kind !== 'ratio' || line?.end === undefined) return undefined;
  const part = lineage.scheme.measurements.get(trait.observed.kind.measurements[0]!);
  const level =
    part?.along === undefined ? line.from : (lineage.scheme.axes.get(part.along)?.from ?? line.from);
  return { frame: { zero: line.from, reading: line.to, hundred: line.end, level }, axis: part?.along };
}

/** Specimens that a drawing may rest on: those that count for the value, else the others of the taxon that are bone. */
function drawable(
  taxon: string,
  trait: AnalysedTrait,
  specimens: readonly ResolvedSpecimen[],
): ResolvedSpecimen[] {
  const observation = trait.observed.taxa.get(taxon);
  const counted = observation?.counted.map(({ specimen }) => specimen) ?? [];
  if (counted.some(({ digitisings }) => digitisings.length > 0)) return counted;
  const out = new Set(observation?.leftOut.map(({ specimen }) => specimen));
  return specimens.filter((specimen) => specimen.record.value.taxon === taxon && !out.has(specimen));
}

/**
 * Millimetres in one unit of the frame. A shape that was laid into the frame by relatives has the scale at which its own
 * points came to lie there (by centroid size); none where fewer than two of them did.
 */
function scaleOf(
  shape: TaxonShape,
  placed: ReadonlyMap<string, BasedPoint>,
): Pick<CompiledDrawing, 'mmPerUnit'> {
  if (shape.framed) return { mmPerUnit: shape.mmPerUnit };
  const own = [...shape.points.keys()].filter((id) => placed.get(id)?.basis === 'digitised');
  const sizeMm = spreadOf(own.map((id) => shape.points.get(id)!));
  const size = spreadOf(own.map((id) => placed.get(id)!.at));
  return sizeMm > 0 && size > 0 ? { mmPerUnit: sizeMm / size } : {};
}

/** The template of a view, as a field of a drawing; no field where the scheme names none. */
function templateOf(view: string, { lineage }: AnalysedLineage): { template?: string } {
  const template = lineage.scheme.views.get(view)?.template;
  return template === undefined ? {} : { template };
}
