import { directionsWithin } from './axis.ts';
import { brokenRatio, type BrokenReading } from './broken-reading.ts';
import { projectedMm } from './length.ts';
import type { Point } from './point.ts';

/** A measurement along the axis by the names of its two landmarks. */
export interface AxisMeasurement {
  readonly from: string;
  readonly to: string;
}

/** What a ratio along an axis is worked out from on a specimen with a lost landmark. */
export interface BrokenRatioQuestion {
  readonly part: AxisMeasurement;
  readonly whole: AxisMeasurement;
  readonly lost: string;
  /** Points along the break, one or more. */
  readonly breakPoints: readonly Point[];
  readonly landmarks: ReadonlyMap<string, Point>;
  /** Direction of the axis, from its `from` to its `to`, of length 1. */
  readonly direction: Point;
  /** How far the axis may be off, degrees. */
  readonly axisWithin?: number;
  /** Error of a landmark in every coordinate, mm. */
  readonly coordinateError: number;
  readonly times?: number;
}

/**
 * Readings of a broken ratio: one for each point of the break and each direction that the axis may take, all of which a
 * limit must honour. Undefined where a landmark other than the lost one is missing, the lost one is in neither
 * measurement, or the whole may be 0 or less.
 */
export function findBrokenRatioReadings(question: BrokenRatioQuestion): BrokenReading[] | undefined {
  const { part, whole, lost, breakPoints, direction, axisWithin = 0, coordinateError } = question;
  const inPart = part.from === lost || part.to === lost;
  const inWhole = whole.from === lost || whole.to === lost;
  if (!inPart && !inWhole) return undefined;
  const readings: BrokenReading[] = [];
  for (const breakPoint of breakPoints) {
    const place = (name: string) => (name === lost ? breakPoint : question.landmarks.get(name));
    const ends = [part.from, part.to, whole.from, whole.to].map(place);
    if (ends.some((end) => end === undefined)) return undefined;
    const [partFrom, partTo, wholeFrom, wholeTo] = ends as Point[];
    for (const along of directionsWithin(direction, axisWithin)) {
      const partMm = projectedMm(partFrom!, partTo!, along);
      const wholeMm = projectedMm(wholeFrom!, wholeTo!, along);
      if (!(wholeMm > 0)) return undefined;
      readings.push(
        brokenRatio({
          part: { mm: partMm, error: coordinateError * Math.SQRT2 },
          whole: { mm: wholeMm, error: coordinateError * Math.SQRT2 },
          correlation: sharedEnds(part, whole) / 2,
          lostAddsTo: inPart && inWhole ? 'both' : inPart ? 'part' : 'whole',
          times: question.times ?? 1,
        }),
      );
    }
  }
  return readings;
}

/** Landmarks that two measurements share at the same end: each makes half of the covariance of their errors. */
function sharedEnds(part: AxisMeasurement, whole: AxisMeasurement): number {
  const same = Number(part.from === whole.from) + Number(part.to === whole.to);
  const crossed = Number(part.from === whole.to) + Number(part.to === whole.from);
  return same - crossed;
}
