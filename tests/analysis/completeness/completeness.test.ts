import { expect, test } from 'vitest';
import {
  characterCompleteness,
  findCompleteness,
  mostPreserved,
  skeletalCompleteness,
} from '../../../analysis/completeness/index.ts';

const element = (id: string, weight: number, preserved: number) => ({ id, weight, preserved });

test('completeness does not depend on the unit of the weights, and is 0 and 100 at its ends', () => {
  const elements = [element('skull', 20, 0.5), element('pelvis', 5, 1)];
  const scaled = elements.map((one) => ({ ...one, weight: one.weight / 7 }));
  expect(skeletalCompleteness(elements)).toBe(60);
  expect(skeletalCompleteness(scaled)).toBeCloseTo(60, 12);
  expect(skeletalCompleteness([element('skull', 3, 0)])).toBe(0);
  expect(skeletalCompleteness([element('skull', 3, 1), element('dust', 0, 0)])).toBe(100);
});

test('several specimens have at least the most of each element that one of them has', () => {
  const union = mostPreserved([
    new Map([['skull', 0.8]]),
    new Map([
      ['skull', 0.3],
      ['pelvis', 0.5],
    ]),
  ]);
  expect([...union]).toEqual([
    ['skull', 0.8],
    ['pelvis', 0.5],
  ]);
  expect(mostPreserved([]).size).toBe(0);
});

test('weights and shares that cannot be are refused with their element', () => {
  expect(() => skeletalCompleteness([])).toThrow('needs an element with a weight above 0');
  expect(() => skeletalCompleteness([element('jaw', 1, 1.2)])).toThrow(
    'preserved share of "jaw" must lie in 0 to 1, got 1.2',
  );
  expect(() => skeletalCompleteness([element('jaw', NaN, 1)])).toThrow(
    'weight of "jaw" must be 0 or more, got NaN',
  );
});

test('characters that do not apply are left out of the second share, and none at all has no share', () => {
  expect(characterCompleteness({ characters: 4, scored: 1, inapplicable: 2 })).toEqual({
    ofAll: 25,
    ofApplicable: 50,
    unknown: 1,
  });
  expect(characterCompleteness({ characters: 0, scored: 0, inapplicable: 0 })).toEqual({
    ofAll: null,
    ofApplicable: null,
    unknown: 0,
  });
  expect(() => characterCompleteness({ characters: 3, scored: 2, inapplicable: 2 })).toThrow(
    '2 scored and 2 inapplicable characters of 3 cannot be',
  );
});

const skull = [
  { id: 'cranium', share: 70 },
  { id: 'braincase', share: 28, within: 'cranium' },
  { id: 'mandible', share: 30 },
];

test('one side of a paired part is half of it, and the other side of another specimen is the other half', () => {
  const left = [{ element: 'mandible', side: 'left' as const, preserved: 0.8 }];
  const right = [{ element: 'mandible', side: 'right' as const, preserved: 1 }];
  const found = findCompleteness(skull, [left, right, left])!;
  // 30 % of the whole: 0.8 and 1 of its two halves
  expect(found.best).toBeCloseTo(15, 12);
  expect(found.together).toBeCloseTo(12 + 15, 12);
  expect(found.elements.get('mandible')).toBeCloseTo(0.9, 12);
  expect(found.elements.get('cranium')).toBe(0);
});

test('a part counts toward the element that it lies within, unless that is recorded itself', () => {
  const partOnly = findCompleteness(skull, [[{ element: 'braincase', preserved: 0.5 }]])!;
  expect(partOnly.together).toBeCloseTo(14, 12);
  const both = [
    { element: 'cranium', preserved: 0.9 },
    { element: 'braincase', preserved: 1 },
  ];
  expect(findCompleteness(skull, [both])!.together).toBeCloseTo(63, 12);
});

test('specimens that have none of the listed elements leave nothing to reckon', () => {
  expect(findCompleteness(skull, [])).toBeUndefined();
  expect(findCompleteness(skull, [[{ element: 'rib', preserved: 1 }]])).toBeUndefined();
});
