import { describe, expect, test } from 'vitest';
import {
  addRound,
  finishSpecimen,
  markAbsent,
  putPlace,
  tapPlace,
  withNow,
} from '../../../components/measuring/bench-edits.ts';
import { freshBench, hasWork, mmPerPx } from '../../../components/measuring/bench-record.ts';
import { missingOf } from '../../../components/measuring/missing.ts';
import { startPast, stepAgain, stepBack, stepOn } from '../../../components/measuring/past-states.ts';
import {
  nextOpen,
  placeOf,
  slotKey,
  slotsOf,
  stepSlot,
  type PointSlot,
} from '../../../components/measuring/point-slots.ts';
import { readKept } from '../../../components/measuring/read-kept.ts';

const landmarks = ['nose', 'eye', 'rear'];
const bench = freshBench('marsh-hens', 'left');
const landmark = (id: string): PointSlot => ({ kind: 'landmark', landmark: id });
const keys = (slots: readonly PointSlot[]) => slots.map(slotKey);

describe('the order of points', () => {
  test('is the bar, then the landmarks, and the next open one follows whatever was placed', () => {
    const slots = slotsOf(bench, landmarks);
    expect(keys(slots)).toEqual(['scale 0', 'scale 1', 'landmark nose', 'landmark eye', 'landmark rear']);
    const placed = putPlace(bench, landmark('nose'), [3, 4]);
    expect(slotKey(nextOpen(placed, slots, { kind: 'scale', end: 1 })!)).toBe('landmark eye');
  });

  test('goes round to what was left out, and ends when nothing is open', () => {
    const slots = slotsOf(bench, ['nose']);
    const both = putPlace(putPlace(bench, slots[1]!, [9, 0]), slots[2]!, [1, 1]);
    expect(nextOpen(both, slots, slots[2])).toEqual(slots[0]);
    expect(nextOpen(putPlace(both, slots[0]!, [0, 0]), slots, slots[2])).toBeUndefined();
  });

  test('takes a landmark that is lost for done', () => {
    const lost = markAbsent(bench, 'nose', true);
    expect(slotKey(nextOpen(lost, slotsOf(lost, landmarks), { kind: 'scale', end: 1 })!)).toBe(
      'landmark eye',
    );
  });

  test('is walked both ways round its ends', () => {
    const slots = slotsOf(bench, landmarks);
    expect(stepSlot(slots, slots.at(-1), 1)).toEqual(slots[0]);
    expect(stepSlot(slots, undefined, -1)).toEqual(slots.at(-1));
  });
});

describe('a lost landmark', () => {
  const lost = markAbsent(putPlace(bench, landmark('nose'), [3, 4]), 'nose', true);

  test('has no place in any round', () => {
    expect(placeOf(lost, landmark('nose'))).toBeUndefined();
    expect(lost.now.absent).toEqual(['nose']);
  });

  test('takes taps as points of its break, and never comes back by one', () => {
    const tapped = tapPlace(tapPlace(lost, landmark('nose'), [5, 6]), landmark('nose'), [7, 8]);
    expect(tapped.now.breaks).toEqual({
      nose: [
        [5, 6],
        [7, 8],
      ],
    });
    expect(tapped.now.absent).toEqual(['nose']);
    expect(putPlace(tapped, { kind: 'break', landmark: 'nose', index: 0 }, null).now.breaks).toEqual({
      nose: [[7, 8]],
    });
  });

  test('that is preserved after all has no break', () => {
    const found = markAbsent(tapPlace(lost, landmark('nose'), [5, 6]), 'nose', false);
    expect(found.now.breaks).toEqual({});
    expect(found.now.absent).toEqual([]);
  });
});

test('a round more starts empty and leaves the first as it was', () => {
  const again = addRound(putPlace(bench, landmark('nose'), [3, 4]));
  expect(again.round).toBe(1);
  expect(placeOf(again, landmark('nose'))).toBeUndefined();
  expect(again.now.rounds[0]).toEqual({ nose: [3, 4] });
});

test('places are kept to the tenth of a px', () => {
  expect(placeOf(putPlace(bench, landmark('eye'), [1.2345, 2.96]), landmark('eye'))).toEqual([1.2, 3]);
});

test('a specimen finished twice stands in the sheet once, as it was last', () => {
  const named = (mm: number) => withNow(bench, { specimen: 'hen-1', scaleMm: mm });
  const twice = finishSpecimen({ ...named(20), finished: finishSpecimen(named(10)).finished });
  expect(twice.finished.map(({ scaleMm }) => scaleMm)).toEqual([20]);
  expect(hasWork(twice.now)).toBe(false);
});

test('undo and redo lead through the same states, and a new step ends the redo', () => {
  const past = stepOn(stepOn(startPast('a'), 'b'), 'c');
  expect(stepBack(past).now).toBe('b');
  expect(stepAgain(stepBack(past))).toEqual(past);
  expect(stepBack(startPast('a')).now).toBe('a');
  expect(stepAgain(stepOn(stepBack(past), 'd')).now).toBe('d');
});

test('a bar without length or with its ends on one place gives no scale', () => {
  const ends = {
    scale: [
      [0, 0],
      [30, 40],
    ] as const,
  };
  expect(mmPerPx({ ...ends, scaleMm: 10 })).toBeCloseTo(0.2, 12);
  expect(mmPerPx({ ...ends, scaleMm: 0 })).toBeUndefined();
  expect(
    mmPerPx({
      scale: [
        [5, 5],
        [5, 5],
      ],
      scaleMm: 10,
    }),
  ).toBeUndefined();
  expect(mmPerPx({ scale: [null, [5, 5]], scaleMm: 10 })).toBeUndefined();
});

test('what is missing is named, and what waits is counted over the rounds', () => {
  expect(missingOf(bench, landmarks)).toEqual({ codes: ['specimen', 'scale', 'none'], points: 0 });
  const begun = addRound(
    markAbsent(putPlace(withNow(bench, { specimen: 'hen-1' }), landmark('eye'), [1, 1]), 'nose', true),
  );
  expect(missingOf(begun, landmarks)).toEqual({ codes: ['scale'], points: 3 });
});

describe('what was kept on the machine', () => {
  const whole = putPlace(bench, landmark('nose'), [3, 4]);

  test('comes back the same', () => {
    expect(readKept(JSON.stringify(whole))).toEqual(whole);
  });

  test.each([
    ['nothing', null],
    ['half a text', '{"lineage":'],
    ['another program’s value', '[1,2]'],
    ['a place that is none', JSON.stringify({ ...whole, now: { ...whole.now, rounds: [{ nose: [1] }] } })],
    ['a round that is not there', JSON.stringify({ ...whole, round: 4 })],
  ])('is left alone when it is %s', (_, text) => {
    expect(readKept(text)).toBeUndefined();
  });
});
