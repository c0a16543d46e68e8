import type { MixtureParts } from '../mixture.ts';

/** Width of a class of draws, in standard deviations of what the draws leave open. */
const classWidth = { full: 0.25, light: 0.5 } as const;

/** No more classes than this, however little the draws leave open. */
const mostClasses = { full: 400, light: 24 } as const;

/** Room for the classes of one node at one rate. */
const [weightOf, momentOf, squareOf] = [0, 1, 2].map(() => new Float64Array(mostClasses.full));

/**
 * Adds to a mixture the normal distributions that stand at so many weighted places and share one variance: places that lie
 * within a fraction of a deviation are one distribution of the same mean and variance, so that thousands of draws become a few
 * parts. Linear in places.
 */
export function gatherDraws(
  parts: MixtureParts,
  places: { readonly at: Float64Array; readonly weights: Float64Array },
  known: { readonly weight: number; readonly mean: number; readonly variance: number },
  effort: 'full' | 'light',
): void {
  const { at, weights } = places;
  let lowest = Infinity;
  let highest = -Infinity;
  for (let k = 0; k < at.length; k++) {
    lowest = Math.min(lowest, at[k]!);
    highest = Math.max(highest, at[k]!);
  }
  const wanted = Math.ceil((highest - lowest) / (classWidth[effort] * Math.sqrt(known.variance)));
  const count = wanted >= 1 ? Math.min(mostClasses[effort], wanted) : 1;
  const perClass = highest > lowest ? count / (highest - lowest) : 0;
  weightOf!.fill(0, 0, count);
  momentOf!.fill(0, 0, count);
  squareOf!.fill(0, 0, count);
  for (let k = 0; k < at.length; k++) {
    const own = Math.min(count - 1, Math.floor((at[k]! - lowest) * perClass));
    const off = at[k]! - lowest;
    weightOf![own]! += weights[k]!;
    momentOf![own]! += weights[k]! * off;
    squareOf![own]! += weights[k]! * off * off;
  }
  for (let own = 0; own < count; own++) {
    const weight = weightOf![own]!;
    if (weight === 0) continue;
    const off = momentOf![own]! / weight;
    const spread = Math.max(0, squareOf![own]! / weight - off * off);
    parts.add(known.weight * weight, known.mean + lowest + off, known.variance + spread);
  }
}
