import type { OutlineLine } from './slice-block.ts';

/**
 * Points of one line of an outline as an SVG attribute, in whole tenths of a unit. A line of points, not path data: a
 * browser that reads new path data works out styles anew, which costs more than all the rest of a step.
 */
export function linePoints(outline: ArrayLike<number>, { first, last }: OutlineLine): string {
  let points = '';
  for (let index = 2 * first; index <= 2 * last; index += 2)
    points += textOf(outline[index]!) + textOf(outline[index + 1]!);
  return points;
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
