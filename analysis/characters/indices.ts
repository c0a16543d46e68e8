/** Steps of a character, or their sums over characters: on the tree, and the fewest and most on any tree. */
export interface StepCounts {
  readonly steps: number;
  readonly minimum: number;
  readonly maximum: number;
}

/**
 * Consistency index, fewest steps by steps: 1 without any extra step (Kluge and Farris 1969, Systematic Zoology 18: 1–32).
 * Characters that are not informative raise it on every tree alike. Null where nothing changes.
 */
export function consistencyIndex({ steps, minimum }: StepCounts): number | null {
  return steps === 0 ? null : minimum / steps;
}

/**
 * Retention index, the share of avoidable steps that the tree avoids (Farris 1989, Cladistics 5: 417–419): 1 without any
 * extra step, 0 with as many as on any tree. Null where no tree could avoid a step.
 */
export function retentionIndex({ steps, minimum, maximum }: StepCounts): number | null {
  return maximum === minimum ? null : (maximum - steps) / (maximum - minimum);
}
