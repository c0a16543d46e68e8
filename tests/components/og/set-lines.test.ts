import { expect, test } from 'vitest';
import { setLines } from '../../../components/pages/og/_picture/set-lines.ts';

/** Every letter is half as wide as it is high. */
const width = (text: string, size: number) => text.length * size * 0.5;
const room = { width: 200, height: 100, leading: 1, sizes: [40, 20, 10] };

test('a short text has the largest size', () => {
  expect(setLines('nose', width, room)).toEqual({ lines: ['nose'], size: 40 });
});

test('a long text goes down to a size at which all of it fits', () => {
  const { lines, size } = setLines('the nose that climbed the face of the reed trunk', width, room);
  expect(size).toBe(20);
  expect(lines.join(' ')).toBe('the nose that climbed the face of the reed trunk');
});

test('lines are of about one length, without a last word left alone', () => {
  expect(setLines('one two three four', width, { ...room, sizes: [30] }).lines).toEqual([
    'one two',
    'three four',
  ]);
});

test('what fits at no size is cut with an ellipsis', () => {
  const { lines, size } = setLines('word '.repeat(200), width, room);
  expect(size).toBe(10);
  expect(lines).toHaveLength(10);
  expect(lines.at(-1)).toMatch(/…$/);
  for (const line of lines) expect(width(line, size)).toBeLessThanOrEqual(room.width);
});

test('a word wider than the room is cut', () => {
  const { lines } = setLines('x'.repeat(90), width, room);
  expect(lines).toHaveLength(1);
  expect(lines[0]).toMatch(/^x+…$/);
});

test('no text has no lines', () => {
  expect(setLines('', width, room).lines).toEqual([]);
});
