import { expect, test } from 'vitest';
import {
  improbableStatement,
  modelStatement,
  sensitivityStatement,
  spanStatement,
  valueStatement,
} from '../../../analysis/statements/index.ts';

const compared = (plain: number | null, trend: number | null) => [
  { name: 'brownian', aicc: plain },
  { name: 'trend', aicc: trend },
];
const model = (name: string, plain: number | null, trend: number | null) =>
  modelStatement({ name, compared: compared(plain, trend), asked: 'auto', margin: 2 });

test('the model is told with the criterion that the other lost by', () => {
  expect(model('trend', 10, 7.6)).toEqual({ code: 'model.trend', args: { better: 2.4, decimals: 1 } });
  expect(model('brownian', 10, 13.25)).toEqual({ code: 'model.brownian', args: { worse: 3.3, decimals: 1 } });
  expect(model('brownian', 10, 8.5)).toEqual({
    code: 'model.brownianNear',
    args: { better: 1.5, margin: 2, decimals: 1 },
  });
});

test('a model that was chosen, or could not be compared, is told as such', () => {
  expect(modelStatement({ name: 'trend', compared: compared(1, 2), asked: 'trend', margin: 2 }).code).toBe(
    'model.asked.trend',
  );
  expect(modelStatement({ name: 'brownian', compared: [], asked: 'auto', margin: 2 }).code).toBe(
    'model.noTime',
  );
  expect(model('brownian', null, null).code).toBe('model.tooFew');
});

test('a model that is only compared is told by its criterion, and on the end of its range by that alone', () => {
  expect(sensitivityStatement({ name: 'pull', aicc: 12.34 }, 10)).toEqual({
    code: 'sensitivity.pull.worse',
    args: { by: 2.3, decimals: 1 },
  });
  expect(sensitivityStatement({ name: 'lambda', aicc: 9 }, 10)!.code).toBe('sensitivity.lambda.better');
  expect(sensitivityStatement({ name: 'lambda', aicc: 3, onBound: 'highest' }, 10)).toEqual({
    code: 'sensitivity.lambda.highest',
    args: {},
  });
  expect(sensitivityStatement({ name: 'pull', aicc: null }, 10)).toBeUndefined();
});

test('a limit is called improbable under one chance in a thousand, told as one in so many', () => {
  expect(improbableStatement('obm-1', 0.000234)!.args).toEqual({ specimen: 'obm-1', oneIn: 4000 });
  expect(improbableStatement('obm-1', 1e-30)!.args['oneIn']).toBe(1e6);
  expect(improbableStatement('obm-1', 0)!.args['oneIn']).toBe(1e6);
  expect(improbableStatement('obm-1', 0.001)).toBeUndefined();
  expect(improbableStatement('obm-1', undefined)).toBeUndefined();
});

test('a span prints its ends outward, each at the place of its own width, and nothing where an end is open', () => {
  const over = { trees: 2, rules: 2, ageSets: 201 };
  expect(spanStatement({ middle: [40.26, 41.31], interval: [28.4, 57.2], over })!.args).toEqual({
    trees: 2,
    rules: 2,
    ages: 201,
    middleLow: 40,
    middleHigh: 42,
    middleDecimals: 0,
    endsLow: 28,
    endsHigh: 58,
    endsDecimals: 0,
  });
  expect(spanStatement({ middle: [1, 2], interval: [null, 2], over })).toBeUndefined();
});

test('an estimate without both ends of its interval is not known, and no zero is printed as negative', () => {
  const value = { status: 'inferred', estimate: 3, interval: [null, 4] } as const;
  expect(valueStatement(value).code).toBe('value.unknown');
  const near = valueStatement({ status: 'measured', estimate: -0.2, interval: [-3.2, 2.8] });
  expect(Object.is(near.args['value'], 0)).toBe(true);
});
