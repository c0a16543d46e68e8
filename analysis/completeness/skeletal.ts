/** A part of the skeleton: its share of the whole in any unit, and how much of it is there, 0 to 1. */
export interface PreservedElement {
  readonly id: string;
  readonly weight: number;
  readonly preserved: number;
}

/**
 * Skeletal completeness in percent: preserved parts weighted by their share of the whole (Mannion and Upchurch 2010,
 * Paleobiology 36: 283–302). Weights are those of a group of animals and come with a source; they need not add up to 1.
 * Throws for a weight below 0, a share outside 0 to 1, and weights that are all 0.
 */
export function skeletalCompleteness(elements: readonly PreservedElement[]): number {
  for (const { id, weight, preserved } of elements) {
    if (!(weight >= 0 && weight < Infinity))
      throw new Error(`weight of "${id}" must be 0 or more, got ${weight}`);
    if (!(preserved >= 0 && preserved <= 1))
      throw new Error(`preserved share of "${id}" must lie in 0 to 1, got ${preserved}`);
  }
  const whole = elements.reduce((sum, { weight }) => sum + weight, 0);
  if (!(whole > 0)) throw new Error('completeness needs an element with a weight above 0');
  return (100 * elements.reduce((sum, { weight, preserved }) => sum + weight * preserved, 0)) / whole;
}

/**
 * Most of each element that any one specimen has: the least that several specimens have together, because their parts may be
 * the same ones. Elements in the order they are first met; a specimen that does not name one has none of it.
 */
export function mostPreserved(specimens: readonly ReadonlyMap<string, number>[]): Map<string, number> {
  const most = new Map<string, number>();
  for (const specimen of specimens)
    for (const [id, preserved] of specimen) most.set(id, Math.max(most.get(id) ?? 0, preserved));
  return most;
}
