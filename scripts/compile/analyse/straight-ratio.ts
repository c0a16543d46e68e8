import { brokenRatio, distanceMm, type Point } from '../../../analysis/traits/index.ts';
import type { Measurement } from '../schema/index.ts';
import type { BrokenQuestion, BrokenTrait } from './broken-specimen.ts';
import type { UsablePoints } from './landmark-lengths.ts';
import { timesOf } from './trait-kind.ts';

/**
 * Readings of a ratio of straight lengths of which an end is lost: each lengthens in its own direction beyond the break.
 * Undefined where another landmark is missing, or a length runs along a curve.
 */
export function straightRatio(
  question: BrokenQuestion,
  measurements: readonly [Measurement, Measurement],
  points: UsablePoints,
  breakPoints: readonly Point[],
): BrokenTrait[] | undefined {
  const { trait, lost, coordinateError } = question;
  if (measurements.some(({ along, through }) => along !== undefined || through !== undefined))
    return undefined;
  const isLost = measurements.map(({ from, to }) => from === lost.landmark || to === lost.landmark);
  const lengths = breakPoints.map((breakPoint) =>
    measurements.map((each) => straight(each, lost.landmark, breakPoint, points)),
  );
  if (lengths.flat().some((mm) => mm === undefined || mm === 0)) return undefined;
  const error = coordinateError * Math.SQRT2;
  const lostAddsTo = isLost[0] && isLost[1] ? 'both' : isLost[0] ? 'part' : 'whole';
  return lengths.map(([part, whole]) => ({
    reading: brokenRatio({
      part: { mm: part!, error },
      whole: { mm: whole!, error },
      lostAddsTo,
      times: timesOf(trait),
    }),
    preservedMm: [part!, whole!],
  }));
}

function straight(
  { from, to }: Measurement,
  lost: string,
  breakPoint: Point,
  points: UsablePoints,
): number | undefined {
  const [start, end] = [from!, to!].map((landmark) =>
    landmark === lost ? breakPoint : points.get(landmark),
  );
  return start && end ? distanceMm(start, end) : undefined;
}
