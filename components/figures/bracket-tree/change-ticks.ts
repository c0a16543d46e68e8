import { path, text, type Shape } from '../scene/scene.ts';
import type { BracketLayout } from './bracket-layout.ts';

type Part = readonly [role: string, shape: Shape];

/** Room that a tick and its number like to have along a branch, in sizes of the letters. */
const ease = 1.05;

/**
 * Ticks across the line that leads to a node, each with the number of its character over it, spread evenly between the ends of
 * the line; nearer together where the line is short.
 */
export function changeTicks(
  numbers: readonly number[],
  line: { readonly from: number; readonly to: number; readonly y: number },
  { fontSize, markScale }: BracketLayout,
): Part[] {
  const room = line.to - line.from;
  const step = Math.min(fontSize * ease, room / (numbers.length + 1));
  const first = line.from + (room - step * (numbers.length - 1)) / 2;
  const reach = 4.6 * markScale;
  return numbers.flatMap((number, index): Part[] => {
    const x = first + index * step;
    return [
      ['change-tick', { kind: 'path', d: path`M${x} ${line.y - reach}V${line.y + reach}` }],
      [
        'change-number',
        text(x, line.y - reach - 2 * markScale, fontSize * 0.86, String(number), 'middle', 'strong'),
      ],
    ];
  });
}
