import {
  brokenLength,
  distanceMm,
  findBrokenRatioReadings,
  projectedMm,
  type Point,
} from '../../../analysis/traits/index.ts';
import type { Digitising } from '../resolve/digitising.ts';
import type { Measurement } from '../schema/index.ts';
import type { BrokenQuestion, BrokenTrait } from './broken-specimen.ts';
import { findDirection, usablePoints, type UsablePoints } from './landmark-lengths.ts';
import { straightRatio } from './straight-ratio.ts';
import { timesOf } from './trait-kind.ts';
import { excludedLandmarks } from './treatment.ts';

/** Readings from the digitised points of a break; undefined where none were digitised, or a landmark besides the lost one is missing. */
export function brokenByLandmarks(question: BrokenQuestion): BrokenTrait[] | undefined {
  if (question.kind.kind === 'size' || !question.lost.break) return undefined;
  for (const digitising of question.specimen.digitisings) {
    const broken = onDigitising(question, digitising);
    if (broken) return broken;
  }
  return undefined;
}

function onDigitising(question: BrokenQuestion, digitising: Digitising): BrokenTrait[] | undefined {
  const { kind, lost, lineage } = question;
  const points = meanPoints(digitising, excludedLandmarks(question.specimen.record.value));
  const breakPoints = lost
    .break!.filter((point) => point.length === digitising.dimensions)
    .map((point) => point.map((coordinate) => coordinate * digitising.mmPerUnit));
  if (breakPoints.length === 0) return undefined;
  const measurements = kind.measurements.map((id) => lineage.scheme.measurements.get(id)!);
  return kind.kind === 'ratio'
    ? ratio(question, measurements as [Measurement, Measurement], points, breakPoints)
    : length(question, measurements[0]!, points, breakPoints);
}

/** Means of the repeats of each point, in mm. */
function meanPoints(digitising: Digitising, excluded: ReadonlySet<string>): UsablePoints {
  const repeats = digitising.repeats.map((repeat) => usablePoints(repeat, digitising.mmPerUnit, excluded));
  const landmarks = new Set(repeats.flatMap((repeat) => [...repeat.keys()]));
  const mean = (landmark: string): Point => {
    const own = repeats.flatMap((repeat) => (repeat.has(landmark) ? [repeat.get(landmark)!] : []));
    return own[0]!.map((_, axis) => own.reduce((sum, point) => sum + point[axis]!, 0) / own.length);
  };
  return new Map([...landmarks].map((landmark) => [landmark, mean(landmark)]));
}

function ratio(
  question: BrokenQuestion,
  [part, whole]: readonly [Measurement, Measurement],
  points: UsablePoints,
  breakPoints: readonly Point[],
): BrokenTrait[] | undefined {
  const { trait, lost, lineage, coordinateError } = question;
  if (part.along === undefined || part.along !== whole.along)
    return straightRatio(question, [part, whole], points, breakPoints);
  const axis = lineage.scheme.axes.get(part.along);
  const direction = axis && findDirection(axis, points);
  if (!direction) return undefined;
  const ends = ([part, whole] as const).map((each) => ({ from: each.from!, to: each.to! }));
  const readings = findBrokenRatioReadings({
    part: ends[0]!,
    whole: ends[1]!,
    lost: lost.landmark,
    breakPoints,
    landmarks: points,
    direction,
    axisWithin: lost.axisWithin ?? 0,
    coordinateError,
    times: timesOf(trait),
  });
  if (!readings) return undefined;
  const perPoint = readings.length / breakPoints.length;
  return readings.map((reading, index) => {
    const breakPoint = breakPoints[Math.floor(index / perPoint)]!;
    const preservedMm = ends.map(({ from, to }) =>
      along(from, to, lost.landmark, breakPoint, points, direction),
    );
    return { reading, preservedMm };
  });
}

function along(
  from: string,
  to: string,
  lost: string,
  breakPoint: Point,
  points: UsablePoints,
  direction: Point,
): number {
  const place = (landmark: string) => (landmark === lost ? breakPoint : points.get(landmark)!);
  return projectedMm(place(from), place(to), direction);
}

function length(
  question: BrokenQuestion,
  measurement: Measurement,
  points: UsablePoints,
  breakPoints: readonly Point[],
): BrokenTrait[] | undefined {
  const { lost, lineage, coordinateError } = question;
  const other = points.get(measurement.from === lost.landmark ? measurement.to! : measurement.from!);
  if (!other || measurement.through) return undefined;
  const axis = measurement.along === undefined ? undefined : lineage.scheme.axes.get(measurement.along);
  const direction = axis && findDirection(axis, points);
  if (axis && !direction) return undefined;
  const lengths = breakPoints.map((point) =>
    direction ? Math.abs(projectedMm(other, point, direction)) : distanceMm(other, point),
  );
  return lengths.map((mm) => ({
    reading: brokenLength({ mm, error: coordinateError * Math.SQRT2 }),
    preservedMm: [mm],
  }));
}
