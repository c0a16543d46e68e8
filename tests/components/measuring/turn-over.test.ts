import { expect, test } from 'vitest';
import { freshBench, type BenchRecord } from '../../../components/measuring/bench-record.ts';
import { readKept } from '../../../components/measuring/read-kept.ts';
import { recordText } from '../../../components/measuring/sheet-text.ts';
import { turnOver } from '../../../components/measuring/turn-over.ts';

const empty = freshBench('hill-hoppers', 'left');
const bench: BenchRecord = {
  ...empty,
  ownLine: [[10, 20], null],
  now: {
    ...empty.now,
    specimen: 'hm-9',
    picture: { name: 'hm-9.png', width: 800, height: 600 },
    scale: [
      [100, 550],
      [200.5, 550],
    ],
    scaleMm: 10,
    rounds: [{ 'snout-tip': [700, 300] }, {}],
    breaks: { chin: [[690, 400]] },
  },
};

test('everything that was placed is turned over with the picture, about its middle', () => {
  const { now, ownLine } = turnOver(bench);
  expect(now.rounds).toEqual([{ 'snout-tip': [100, 300] }, {}]);
  expect(now.scale).toEqual([
    [700, 550],
    [599.5, 550],
  ]);
  expect(now.breaks).toEqual({ chin: [[110, 400]] });
  expect(ownLine).toEqual([[790, 20], null]);
});

test('a second turn brings back what was there', () => {
  expect(turnOver(turnOver(bench))).toEqual({
    ...bench,
    now: { ...bench.now, picture: { ...bench.now.picture!, mirrored: false } },
  });
});

test('a picture that was turned over has a name of its own, and its record says that it is mirrored', () => {
  const { now } = turnOver(bench);
  expect(now.picture).toEqual({ name: 'hm-9-turned.png', width: 800, height: 600, mirrored: true });
  expect(recordText([now], 'left')).toContain('    picture: "images/hm-9-turned.png"\n    mirrored: true\n');
  expect(recordText([bench.now], 'left')).not.toContain('mirrored');
});

test('a bench without a picture stays as it is', () => {
  expect(turnOver(empty)).toBe(empty);
});

test('what was kept says that a picture is turned over', () => {
  const turned = turnOver(bench);
  expect(readKept(JSON.stringify(turned))).toEqual(turned);
  const wrong = { ...turned, now: { ...turned.now, picture: { ...turned.now.picture, mirrored: 'yes' } } };
  expect(readKept(JSON.stringify(wrong))).toBeUndefined();
});
