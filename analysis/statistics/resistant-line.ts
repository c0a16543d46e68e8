/** A straight line through points, y = intercept + slope · x. */
export interface Line {
  readonly slope: number;
  readonly intercept: number;
}

/** Beyond so many points the pairs are too many: that many of them, evenly spread over their order, stand for all. */
const mostPoints = 200;

/**
 * Line by the median of the slopes of all pairs of points that differ in x (Theil 1950; Sen 1968, Journal of the American
 * Statistical Association 63: 1379–1389), its intercept the median of y − slope · x. Nearly a third of the points may be
 * wrong without moving it far. Undefined where no two points differ in x. The square of the points in time, up to 200.
 */
export function findResistantLine(points: readonly (readonly [x: number, y: number])[]): Line | undefined {
  const step = Math.max(1, points.length / mostPoints);
  const used = Array.from(
    { length: Math.min(points.length, mostPoints) },
    (_, k) => points[Math.floor(k * step)]!,
  );
  const slopes: number[] = [];
  for (let i = 0; i < used.length; i++)
    for (let j = i + 1; j < used.length; j++) {
      const across = used[j]![0] - used[i]![0];
      if (across !== 0) slopes.push((used[j]![1] - used[i]![1]) / across);
    }
  if (slopes.length === 0) return undefined;
  const slope = median(slopes);
  return { slope, intercept: median(used.map(([x, y]) => y - slope * x)) };
}

/** Middle value, or the mean of the two in the middle; NaN of none. */
export function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  const middle = sorted.length >> 1;
  if (sorted.length === 0) return NaN;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
