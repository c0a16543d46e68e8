import { expect, test } from 'vitest';
import { findRepeatComponents } from '../../../analysis/traits/index.ts';
import { lastFindStatement, repeatsStatement } from '../../../analysis/statements/index.ts';

/** Travel times along six rails, three runs each: `Rail` of Pinheiro and Bates 2000, Mixed-Effects Models, chapter 1. */
const rails = [
  [55, 53, 54],
  [26, 37, 32],
  [78, 91, 85],
  [92, 100, 96],
  [49, 51, 50],
  [80, 85, 83],
];

test('the technical error of the rails is the within-group deviation that the book prints', () => {
  const { within, repeatability, percentError } = findRepeatComponents(rails)!;
  const said = repeatsStatement(
    { from: 'callipers', specimens: rails.length, within, repeatability, percentError },
    'mm',
  );
  // 4.020779 and 0.97439868, from memory of the book and reproduced by nlme's lme
  expect(said.args).toMatchObject({ error: 4, decimals: 1, repeatability: 0.974, percent: 2.57 });
});

test('what is nearly all true variance is never said to be wholly so', () => {
  const near = { from: 'landmarks', specimens: 24, within: 0.0579, repeatability: 0.99996 } as const;
  const { code, args } = repeatsStatement({ ...near, percentError: 0.0042 }, 'percent');
  expect(code).toBe('repeats.landmarks');
  expect(args).toMatchObject({ error: 0.24, decimals: 2, repeatability: 0.999, percent: 0.01 });
});

test('one specimen read again tells the error, and no share of any variance', () => {
  const { code, args } = repeatsStatement(
    { from: 'callipers', specimens: 1, within: 0.04, repeatability: null, percentError: null },
    'mm',
  );
  expect(code).toBe('repeats.callipers.error');
  expect(args).toEqual({ specimens: 1, error: 0.2, unit: 'mm', decimals: 2 });
});

test('an end after the last find is rounded to the younger side, to what its distance allows', () => {
  // nine beds from 83.2 to 71.5 Ma: 66.18567942864725 Ma at 95% (Strauss and Sadler 1989, equation 20)
  const said = lastFindStatement({ last: 71.5, beds: 9, youngestMa: 66.18567942864725, level: 0.95 });
  expect(said.code).toBe('lastFind.limit');
  expect(said.args).toMatchObject({ beds: 9, percent: 95, youngest: 66, decimals: 0 });
  const near = lastFindStatement({ last: 5.33, beds: 30, youngestMa: 5.287, level: 0.95 });
  expect(near.args).toMatchObject({ youngest: 5.28, decimals: 2 });
});

test('finds that set no end before the present are said to set none', () => {
  expect(lastFindStatement({ last: 13.8, beds: 3, youngestMa: 0, level: 0.95 }).code).toBe('lastFind.open');
});

test('a last find whose limit rounds to nothing may have lived on to the present', () => {
  const finds = { last: 11, beds: 3, level: 0.95 };
  expect(lastFindStatement({ ...finds, youngestMa: 0.4 }).code).toBe('lastFind.open');
  expect(lastFindStatement({ ...finds, youngestMa: 1.4 })).toMatchObject({
    code: 'lastFind.limit',
    args: { youngest: 1, decimals: 0 },
  });
});
