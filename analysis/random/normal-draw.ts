import { inverseNormal } from '../statistics/index.ts';
import type { Random } from './seeded.ts';

/** One draw from the standard normal distribution, by inversion: one random number a draw. */
export function normalDraw(random: Random): number {
  return inverseNormal(random() + 2 ** -54);
}
