import type { Shape } from './plane.ts';

/**
 * Landmarks of the other side as if they were of this one: x is negated and the members of each pair change names. A
 * landmark without a pair keeps its own. Twice gives back the first shape.
 */
export function mirrorShape(shape: Shape, pairs: readonly (readonly [string, string])[] = []): Shape {
  const names = new Map(pairs.flatMap(([one, other]) => [[one, other] as const, [other, one] as const]));
  return new Map([...shape].map(([id, [x, y]]) => [names.get(id) ?? id, [-x, y]]));
}
