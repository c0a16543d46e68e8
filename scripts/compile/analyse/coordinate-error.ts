import type { ResolvedSpecimen } from '../resolve/specimens.ts';

/**
 * Standard error of one coordinate of one digitised point, mm: the pooled variance of coordinates among repeats of a
 * point, over every specimen that was digitised again. 0 where nothing was.
 */
export function coordinateErrorMm(specimens: readonly ResolvedSpecimen[]): number {
  let squares = 0;
  let df = 0;
  for (const { repeats, mmPerUnit } of specimens.flatMap(({ digitisings }) => digitisings)) {
    if (repeats.length < 2) continue;
    for (const landmark of repeats[0]!.keys()) {
      const points = repeats.flatMap((repeat) => repeat.get(landmark)?.at ?? []);
      const dimensions = repeats[0]!.get(landmark)!.at.length;
      const count = points.length / dimensions;
      if (count < 2 || !Number.isInteger(count)) continue;
      for (let axis = 0; axis < dimensions; axis++) {
        const values = points
          .filter((_, index) => index % dimensions === axis)
          .map((coordinate) => coordinate * mmPerUnit);
        const mean = values.reduce((sum, value) => sum + value, 0) / count;
        squares += values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
        df += count - 1;
      }
    }
  }
  return df > 0 ? Math.sqrt(squares / df) : 0;
}
