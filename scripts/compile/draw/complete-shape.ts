import {
  applySimilarity,
  findSimilarity,
  isOnOneLine,
  shapeAtValue,
  type PlanePoint,
  type Shape,
} from '../../../analysis/geometry/index.ts';
import { beyondBreaks } from './beyond-breaks.ts';
import type { MeasuredFrame, Points } from './frame.ts';
import type { Relatives } from './relatives.ts';
import type { TaxonShape } from './taxon-shape.ts';

/** A point with what it rests on. */
export interface BasedPoint {
  at: PlanePoint;
  basis: 'digitised' | 'relatives';
}

/** What is known of the value of an animal that nobody measured: its middle, and the ends that limit and bracket allow. */
export interface ValueAim {
  middle: number;
  ends: readonly [number, number];
}

/** Restored points as they would stand at one end of the interval, and the value that they then read. */
export interface RestorationEnd {
  value: number;
  points: Map<string, PlanePoint>;
}

/** A shape with the points that no specimen shows, and where those would stand at the ends of the interval. */
export interface CompleteShape {
  points: Map<string, BasedPoint>;
  limits: RestorationEnd[];
}

/** What a shape is completed from. */
export interface Completion {
  frame: MeasuredFrame;
  relatives: Relatives | undefined;
  aim: ValueAim | undefined;
}

/**
 * A shape with the points that no specimen shows, from relatives: laid on what the taxon itself preserves (least squares,
 * with scale), or, where the taxon does not show the measured line, the frame in which its bone is laid. Where the value is
 * known only within limits, the reading stands at its middle and the restored points go along. Nothing restored stands
 * behind a break. A taxon without relatives, or a landmark that fewer than four of them show, stays without.
 */
export function completeShape(taxon: string, shape: TaxonShape, completion: Completion): CompleteShape {
  const expected = completion.relatives?.ofTaxa.get(taxon);
  if (shape.broken && expected?.has(completion.frame.zero))
    return completeBroken(shape, expected, completion);
  return shape.framed
    ? completeFramed(shape, expected ?? new Map(), completion)
    : completeUnframed(shape, expected, completion);
}

function completeFramed(shape: TaxonShape, expected: Shape, completion: Completion): CompleteShape {
  const lent = beyondBreaks(missingLaidOn(shape, expected), shape.points, shape.breaks);
  const open = completion.aim && !shape.points.has(completion.frame.reading);
  if (!open || !lent.has(completion.frame.reading)) return { points: based(shape.points, lent), limits: [] };
  return atValues(shape.points, lent, completion);
}

function completeUnframed(
  shape: TaxonShape,
  expected: Shape | undefined,
  completion: Completion,
): CompleteShape {
  if (!expected) return { points: new Map(), limits: [] };
  const aimed = expectedAt(expected, completion, completion.aim?.middle);
  const shared = [...shape.points.keys()].filter((id) => aimed.has(id));
  const own = shared.map((id) => shape.points.get(id)!);
  // Two points, or points on one line, leave open which way up the bone lies.
  if (isOnOneLine(own)) return { points: new Map(), limits: [] };
  const bone = findSimilarity(
    own,
    shared.map((id) => aimed.get(id)!),
  );
  if (!bone) return { points: new Map(), limits: [] };
  const found = new Map([...shape.points].map(([id, at]) => [id, applySimilarity(bone, at)] as const));
  const lent = new Map([...aimed].filter(([id]) => !found.has(id)));
  return lent.has(completion.frame.reading)
    ? atValues(found, lent, completion)
    : { points: based(found, lent), limits: [] };
}

/** Found and lent points with the reading at its middle and at both ends; bone and the ends of the line stay. */
function atValues(found: Points, lent: Points, { frame, relatives, aim }: Completion): CompleteShape {
  if (!aim) return { points: based(found, lent), limits: [] };
  const held = new Set([...found.keys(), frame.zero, frame.hundred]);
  const lentAt = (value: number) => {
    const moved = shapeAtValue(new Map([...found, ...lent]), relatives!.trend, {
      reading: frame.reading,
      value,
      held,
    });
    return new Map([...moved].filter(([id]) => lent.has(id)));
  };
  return {
    points: based(found, lentAt(aim.middle)),
    limits: aim.ends.map((value) => ({ value, points: lentAt(value) })),
  };
}

/**
 * A skull whose line starts at a break: relatives' shape at a value is laid on its bone, and what it lost slides along the
 * axis until the whole line, the lost length with it, reads that value.
 */
function completeBroken(shape: TaxonShape, expected: Shape, completion: Completion): CompleteShape {
  const { frame, aim } = completion;
  const own = shape.points.get(frame.reading)?.[0];
  const restoredAt = (value: number | undefined): Map<string, PlanePoint> => {
    const lent = missingLaidOn(shape, expectedAt(expected, completion, value));
    const tip = lent.get(frame.zero);
    if (tip === undefined || own === undefined || value === undefined)
      return beyondBreaks(lent, shape.points, shape.breaks);
    const shift = -Math.min(lostLength(own, value), longestLost(shape)) - tip[0];
    const slid = new Map(
      [...lent].map(([id, [x, y]]) => [
        id,
        isOutward(x, shape) ? ([x + shift, y] as const) : ([x, y] as const),
      ]),
    );
    return beyondBreaks(slid, shape.points, shape.breaks);
  };
  const reads = (points: Points) => {
    const lost = -points.get(frame.zero)![0];
    return (100 * (own! + lost)) / (100 + lost);
  };
  const points = based(shape.points, restoredAt(aim?.middle));
  if (!aim || own === undefined) return { points, limits: [] };
  const ends = aim.ends.map((value) => restoredAt(value));
  return { points, limits: ends.map((end) => ({ value: reads(end), points: end })) };
}

/** Whether a place lies outward of all bone: that much of a skull goes with its lost start. */
function isOutward(x: number, { points }: TaxonShape): boolean {
  return [...points.values()].every((found) => x < found[0]);
}

/** Length lost before a break, in units of what is left of the line, for the whole line to read a value; 0 where none does. */
function lostLength(own: number, value: number): number {
  const length = (100 * (value - own)) / (100 - value);
  return length > 0 && Number.isFinite(length) ? length : 0;
}

/** Longest restoration drawn: what the author allows, else as much again as is left. */
function longestLost({ breaks }: TaxonShape): number {
  return Math.min(100, ...breaks.flatMap(({ atMost }) => atMost ?? []));
}

/** Relatives' shape with its reading at a value; as it is without one. */
function expectedAt(expected: Shape, { frame, relatives }: Completion, value: number | undefined): Shape {
  if (value === undefined || !expected.has(frame.reading)) return expected;
  const held = new Set([frame.zero, frame.hundred]);
  return shapeAtValue(expected, relatives!.trend, { reading: frame.reading, value, held });
}

/** The points of a relatives' shape that a taxon lacks, laid on those that it has. */
function missingLaidOn(shape: TaxonShape, expected: Shape): Map<string, PlanePoint> {
  const shared = [...shape.points.keys()].filter((id) => expected.has(id));
  const fit = findSimilarity(
    shared.map((id) => expected.get(id)!),
    shared.map((id) => shape.points.get(id)!),
  );
  const missing = [...expected].filter(([id]) => !shape.points.has(id));
  return new Map(fit ? missing.map(([id, at]) => [id, applySimilarity(fit, at)]) : missing);
}

function based(found: Points, lent: Points): Map<string, BasedPoint> {
  return new Map<string, BasedPoint>([
    ...[...found].map(([id, at]) => [id, { at, basis: 'digitised' }] as const),
    ...[...lent].map(([id, at]) => [id, { at, basis: 'relatives' }] as const),
  ]);
}
