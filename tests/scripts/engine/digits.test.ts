import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { compileLineage } from '../../../scripts/compile/index.ts';

const folder = fileURLToPath(new URL('../../../content/reed-trunks', import.meta.url));
const { compiled } = await compileLineage(folder);

/** Every number of a JSON value, with the path to it. */
function* numbersIn(value: unknown, path: string): Generator<readonly [string, number]> {
  if (typeof value === 'number') yield [path, value];
  else if (typeof value === 'object' && value !== null)
    for (const [key, each] of Object.entries(value)) yield* numbersIn(each, `${path}.${key}`);
}

describe('the whole compiled value', () => {
  const numbers = [...numbersIn(compiled, '')];

  it('holds no number of more than twelve significant digits', () => {
    expect(numbers.length).toBeGreaterThan(5000);
    expect(numbers.filter(([, value]) => value !== Number(value.toPrecision(12)))).toEqual([]);
  });

  it('holds no NaN, no infinity, no undefined and no negative zero, so that JSON gives it back as it is', () => {
    expect(numbers.filter(([, value]) => !Number.isFinite(value) || Object.is(value, -0))).toEqual([]);
    expect(JSON.parse(JSON.stringify(compiled))).toStrictEqual(compiled);
  });

  it('names the model, its seed, what it was compared with, and how limits entered', () => {
    for (const { model, sensitivity, twigs } of compiled!.traits) {
      expect(model!.seed).toBe(1);
      expect(model!.compared.map(({ name }) => name)).toEqual(['brownian', 'trend']);
      expect(sensitivity.map(({ name }) => name)).toEqual(['lambda', 'pull']);
      expect(model!.limits.method).toBe(twigs.length === 1 ? 'quadrature' : 'sampling');
      expect(model!.limits.reported).toBe(true);
    }
    const [, sampled] = compiled!.traits;
    expect(sampled!.model!.limits.splitRHat).toBeLessThan(1.01);
    expect(sampled!.model!.limits.effectiveSize).toBeGreaterThan(400);
  });

  it('takes no printed value from a model that is only compared', () => {
    const methods = compiled!.traits.flatMap(({ values }) => values.map(({ method }) => method));
    expect([...new Set(methods)].sort()).toEqual([
      'limit-of-broken',
      'mean-pooled-spread',
      'none',
      'trend-rate-integrated',
    ]);
  });
});
