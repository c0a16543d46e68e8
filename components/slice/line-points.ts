import type { ShapeEnds } from './slice-at.ts';
import type { OutlineLine } from './slice-block.ts';

/** All points of a line, first to last. */
export function everyPoint({ first, last }: Pick<OutlineLine, 'first' | 'last'>): number[] {
  return Array.from({ length: last - first + 1 }, (_, index) => first + index);
}

/**
 * These points of a shape as an SVG attribute, in whole tenths of a unit. A line of points, not path data: a
 * browser that reads new path data works out styles anew, which costs more than all the rest of a step.
 */
export function linePoints({ from, to, share }: ShapeEnds, points: readonly number[]): string {
  let text = '';
  for (const point of points) {
    const [across, down] = [2 * point, 2 * point + 1];
    text += textOf(from[across]! + share * (to[across]! - from[across]!));
    text += textOf(from[down]! + share * (to[down]! - from[down]!));
  }
  return text;
}

/** Numbers as texts, each made once: a step of the line writes thousands. */
const texts = new Map<number, string>();

function textOf(value: number): string {
  const whole = Math.round(value);
  const known = texts.get(whole);
  if (known !== undefined) return known;
  const text = `${whole} `;
  texts.set(whole, text);
  return text;
}
