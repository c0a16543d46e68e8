import type { PlanePoint } from '../../../analysis/geometry/plane.ts';
import { findDirection } from '../analyse/landmark-lengths.ts';
import { sideNames } from '../resolve/side-names.ts';
import type { ResolvedSpecimen } from '../resolve/specimens.ts';
import type { SchemeIndex } from '../resolve/scheme-index.ts';
import { along, toFrame, type MeasuredFrame, type Points } from './frame.ts';

/** The digitised shape of a taxon: in the frame where its specimens allow it, else in mm as one specimen has it. */
export interface TaxonShape {
  specimens: string[];
  points: Points;
  framed: boolean;
  elements: string[];
  breaks: Break[];
  broken: boolean;
  /** The view that the points were digitised in. */
  view: string;
  /** Millimetres in one unit of the points: 1 outside the frame; in it the mean of the specimens. */
  mmPerUnit: number;
}

/** Where bone ends before a lost landmark. */
export interface Break {
  landmark: string;
  points: PlanePoint[];
  /** Longest length that can be lost beyond it, where the author says so; in the unit of the points. */
  atMost?: number;
}

/** One specimen's points in mm, repeats averaged and of the side that all are drawn from, with what it preserves. */
interface SpecimenShape {
  specimen: ResolvedSpecimen;
  points: Map<string, PlanePoint>;
  breaks: Break[];
  view: string;
  mmPerUnit: number;
}

/**
 * The shape of a taxon. Specimens that show the whole measured line are laid into the frame and averaged; where there is
 * none, one whose line starts at a break stands alone; where there is not even that, the one with the most points stands
 * in millimetres. Undefined where nothing was digitised in two dimensions.
 */
export function findTaxonShape(
  specimens: readonly ResolvedSpecimen[],
  frame: MeasuredFrame,
  axis: string | undefined,
  scheme: SchemeIndex,
): TaxonShape | undefined {
  const shapes = specimens.flatMap((specimen) => shapeOf(specimen, scheme));
  const whole = shapes.flatMap((shape) => framed(shape, frame, axis, scheme, false) ?? []);
  if (whole.length > 0) return { ...meanShape(whole), framed: true };
  const broken = shapes.flatMap((shape) => framed(shape, frame, axis, scheme, true) ?? []);
  if (broken[0]) return { ...meanShape([broken[0]]), framed: true, broken: true };
  const [fullest] = [...shapes].sort((a, b) => b.points.size - a.points.size);
  return fullest && { ...meanShape([fullest]), framed: false };
}

function shapeOf(specimen: ResolvedSpecimen, scheme: SchemeIndex): SpecimenShape[] {
  const flat = specimen.digitisings.find(({ dimensions }) => dimensions === 2);
  if (!flat) return [];
  const nameOf = sideNames(flat, scheme);
  const sums = new Map<string, { x: number; y: number; count: number }>();
  for (const repeat of flat.repeats) {
    for (const [landmark, { at }] of repeat) {
      const name = nameOf(landmark);
      const sum = sums.get(name) ?? { x: 0, y: 0, count: 0 };
      sums.set(name, { x: sum.x + at[0]!, y: sum.y + at[1]!, count: sum.count + 1 });
    }
  }
  const mm = flat.mmPerUnit;
  const points = new Map(
    [...sums].map(([id, { x, y, count }]): [string, PlanePoint] => [
      id,
      [(x / count) * mm, (y / count) * mm],
    ]),
  );
  const breaks = specimen.record.value.lost.flatMap((lost) =>
    lost.break
      ? [
          {
            landmark: nameOf(lost.landmark),
            points: lost.break
              .filter((point) => point.length === 2)
              .map(([x, y]): PlanePoint => [x * mm, y * mm]),
            ...(lost.atMost === undefined ? {} : { atMost: lost.atMost }),
          },
        ]
      : [],
  );
  return points.size === 0 ? [] : [{ specimen, points, breaks, view: flat.source.view, mmPerUnit: 1 }];
}

function framed(
  shape: SpecimenShape,
  frame: MeasuredFrame,
  axis: string | undefined,
  scheme: SchemeIndex,
  fromBreak: boolean,
): SpecimenShape | undefined {
  const { points } = shape;
  const definition = axis === undefined ? undefined : scheme.axes.get(axis);
  const found = definition
    ? findDirection(definition, points)
    : straight(points.get(frame.zero), points.get(frame.hundred));
  if (!found) return undefined;
  const direction: PlanePoint = [found[0]!, found[1]!];
  const start = fromBreak ? rearmost(shape, frame, direction) : points.get(frame.zero);
  if (!start) return undefined;
  const placed = toFrame(points, frame, direction, start);
  if (!placed) return undefined;
  const scale = 100 / Math.abs(along(start, points.get(frame.hundred)!, direction));
  const breaks = shape.breaks.map(({ landmark, points: line, atMost }) => {
    const named = new Map<string, PlanePoint>(line.map((point, index) => [String(index), point]));
    for (const key of [frame.hundred, frame.level]) named.set(key, points.get(key)!);
    const inFrame = toFrame(named, frame, direction, start)!;
    return {
      landmark,
      points: line.map((_, index) => inFrame.get(String(index))!),
      ...(atMost === undefined ? {} : { atMost: atMost * scale }),
    };
  });
  const mmPerUnit = Math.abs(along(start, points.get(frame.hundred)!, direction)) / 100;
  return { ...shape, points: placed, breaks, mmPerUnit };
}

function straight(from: PlanePoint | undefined, to: PlanePoint | undefined): number[] | undefined {
  if (!from || !to) return undefined;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return length > 0 ? [(to[0] - from[0]) / length, (to[1] - from[1]) / length] : undefined;
}

/** The point of the break that lies nearest to the end of the line: what is certainly preserved, and what a limit is read from. */
function rearmost(shape: SpecimenShape, frame: MeasuredFrame, direction: PlanePoint): PlanePoint | undefined {
  const hundred = shape.points.get(frame.hundred);
  if (!hundred) return undefined;
  const reach = (point: PlanePoint) => Math.abs(along(point, hundred, direction));
  return shape.breaks.flatMap(({ points }) => points).sort((a, b) => reach(a) - reach(b))[0];
}

function meanShape(shapes: readonly SpecimenShape[]): Omit<TaxonShape, 'framed'> {
  const landmarks = new Set(shapes.flatMap(({ points }) => [...points.keys()]));
  const mean = (landmark: string): PlanePoint => {
    const places = shapes.flatMap(({ points }) => {
      const place = points.get(landmark);
      return place ? [place] : [];
    });
    const sum = places.reduce<PlanePoint>(([x, y], place) => [x + place[0], y + place[1]], [0, 0]);
    return [sum[0] / places.length, sum[1] / places.length];
  };
  const records = shapes.map(({ specimen }) => specimen.record.value);
  return {
    specimens: records.map(({ id }) => id),
    points: new Map([...landmarks].map((landmark) => [landmark, mean(landmark)])),
    elements: [
      ...new Set(
        records.flatMap(({ elements }) =>
          elements.filter(({ preserved }) => preserved > 0).map(({ element }) => element),
        ),
      ),
    ].sort(),
    breaks: shapes.length === 1 ? shapes[0]!.breaks : [],
    broken: false,
    view: shapes[0]!.view,
    mmPerUnit: shapes.reduce((sum, { mmPerUnit }) => sum + mmPerUnit, 0) / shapes.length,
  };
}
