import { findDirection, usablePoints } from '../analyse/landmark-lengths.ts';
import type { Report } from '../findings/report.ts';
import type { PictureSize } from '../read/picture-size.ts';
import type { Digitising } from '../resolve/digitising.ts';
import type { Repeat } from '../resolve/landmark-sheet.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import { itemPath } from '../source/yaml-source.ts';

/** How far a point may wander between repeats, as a share of the extent of all points of the specimen. */
const wanderingShare = 0.05;

/** Digitised points lie in their picture, agree between repeats, and are on their own side. */
export function checkDigitised(lineage: ResolvedLineage, report: Report): void {
  const { pictures } = lineage.records;
  for (const { record, digitisings } of lineage.specimens) {
    for (const digitising of digitisings) {
      checkPicture(record.value.id, digitising, pictures, report);
      checkRepeats(record.value.id, digitising, report);
      if (digitising.source.mirrored) checkSides(record.value.id, digitising, lineage, report);
    }
  }
}

/** One finding a specimen: points outside are outside for one reason, as a picture that lies on its side. */
function checkPicture(
  specimen: string,
  { source, repeats }: Digitising,
  pictures: ReadonlyMap<string, PictureSize>,
  report: Report,
): void {
  const size = source.picture === undefined ? undefined : pictures.get(source.picture.normalize('NFC'));
  if (!size || source.mmPerUnit === 1) return;
  const points = repeats.flatMap((repeat) =>
    [...repeat].map(([landmark, { at, span }]) => ({ landmark, x: at[0]!, y: at[1]!, span })),
  );
  const isWithin = ({ x, y }: { x: number; y: number }, width: number, height: number) =>
    x >= 0 && y >= 0 && x <= width && y <= height;
  const [first, ...others] = points.filter((point) => !isWithin(point, size.width, size.height));
  if (!first) return;
  const { landmark, x, y, span } = first;
  const more = others.length === 1 ? 'one more point' : `${others.length} more points`;
  const who = `"${landmark}" at ${x}, ${y}`;
  const where = `of ${size.width} × ${size.height}`;
  const liesOnSide = points.every((point) => isWithin(point, size.height, size.width));
  report.add(
    'outside-picture',
    span,
    others.length === 0
      ? `${who} lies outside its picture ${where}`
      : `${who} and ${more} of ${specimen} lie outside their picture ${where}`,
    liesOnSide
      ? 'the picture lies on its side to its points: turn the file, or digitise it as pages show it'
      : 'digitise the point again, or name the picture that it was taken from',
  );
}

function checkRepeats(specimen: string, { repeats }: Digitising, report: Report): void {
  if (repeats.length < 2) return;
  const extent = extentOf(repeats);
  const [first, ...others] = repeats;
  for (const other of others) {
    for (const [landmark, { at, span }] of other) {
      const before = first!.get(landmark)?.at;
      if (!before || !(distance(before, at) > wanderingShare * extent)) continue;
      report.add(
        'repeats-disagree',
        span,
        `"${landmark}" of ${specimen} stands elsewhere than in the first repeat`,
        'digitise it again; a swapped pair of landmarks or another picture is the usual cause',
      );
    }
  }
}

function extentOf(repeats: readonly Repeat[]): number {
  const points = repeats.flatMap((repeat) => [...repeat.values()].map(({ at }) => at));
  const reach = (axis: number) =>
    Math.max(...points.map((at) => at[axis] ?? 0)) - Math.min(...points.map((at) => at[axis] ?? 0));
  return Math.hypot(reach(0), reach(1), reach(2));
}

function distance(one: readonly number[], other: readonly number[]): number {
  return Math.hypot(...one.map((coordinate, index) => coordinate - (other[index] ?? 0)));
}

/** In a picture that was turned over, left stays left: most pairs tell which side is which, and one that says otherwise was swapped. */
function checkSides(
  specimen: string,
  { repeats }: Digitising,
  { scheme }: ResolvedLineage,
  report: Report,
): void {
  for (const repeat of repeats) {
    const pairs = [...scheme.landmarks.values()].flatMap((landmark) => {
      const left = repeat.get(landmark.id);
      const right =
        landmark.side === 'left' && landmark.pair !== undefined ? repeat.get(landmark.pair) : undefined;
      return left && right ? [{ id: landmark.id, left, right }] : [];
    });
    if (pairs.length < 3) continue;
    const mean = [0, 1, 2].map((axis) =>
      pairs.reduce((sum, { left, right }) => sum + (right.at[axis] ?? 0) - (left.at[axis] ?? 0), 0),
    );
    for (const { id, left, right } of pairs) {
      const along = mean.reduce(
        (sum, each, axis) => sum + each * ((right.at[axis] ?? 0) - (left.at[axis] ?? 0)),
        0,
      );
      if (along >= 0) continue;
      report.add(
        'sides-swapped',
        left.span,
        `"${id}" and its pair stand the other way round than the rest of ${specimen}`,
        'swap the two points: in a mirrored picture left and right change places',
      );
    }
  }
}

/** Degrees by which a substitute axis may differ from what is written before it is a finding. */
const turnedTolerance = 3;

/** A substitute axis is turned by what is written, on the skulls that have both axes. */
export function checkTurnedAxes(lineage: ResolvedLineage, report: Report): void {
  const scheme = lineage.records.scheme;
  scheme?.value.axes.forEach((axis, index) => {
    axis.else?.forEach((other, place) => {
      const angles = lineage.specimens.flatMap(({ digitisings }) =>
        digitisings.flatMap((each) => (each.dimensions === 2 ? anglesOf(each, axis, other) : [])),
      );
      if (angles.length < 3) return;
      const mean = angles.reduce((sum, angle) => sum + angle, 0) / angles.length;
      const written = other.turned ?? 0;
      if (Math.abs(mean - written) <= turnedTolerance) return;
      const path = ['axes', index, ...itemPath({ ...scheme, raw: axis }, 'else', place)];
      report.add(
        'axis-turned',
        scheme.at([...path, 'turned']),
        `the substitute axis is turned by ${mean.toFixed(1)} degrees on skulls that have both, and ${written} is written`,
        `write turned: ${mean.toFixed(1)}`,
      );
    });
  });
}

function anglesOf(
  digitising: Digitising,
  axis: { id: string; from: string; to: string },
  other: { from: string; to: string },
): number[] {
  return digitising.repeats.slice(0, 1).flatMap((repeat) => {
    const points = usablePoints(repeat, digitising.mmPerUnit, new Set());
    const main = findDirection({ id: axis.id, from: axis.from, to: axis.to }, points);
    const second = findDirection({ id: axis.id, from: other.from, to: other.to }, points);
    return main && second ? [clockwiseDegrees(main, second)] : [];
  });
}

/** Angle from one direction to another in degrees, clockwise in a picture whose y runs down. */
function clockwiseDegrees(from: readonly number[], to: readonly number[]): number {
  const cross = from[0]! * to[1]! - from[1]! * to[0]!;
  const along = from[0]! * to[0]! + from[1]! * to[1]!;
  return (Math.atan2(cross, along) * 180) / Math.PI;
}
