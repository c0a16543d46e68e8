import { expect, test } from 'vitest';
import { covariancesWith } from '../../../analysis/estimate/passes/covariance.ts';
import { buildNetwork } from '../../../analysis/estimate/passes/network.ts';
import { beliefOf, readAtRates, type AtRate } from '../../../analysis/estimate/passes/per-rate.ts';
import type { ModelName } from '../../../analysis/estimate/index.ts';
import { dateAsGiven, parseNewick } from '../../../analysis/tree/index.ts';
import { nineTips } from '../../reference/nine-tips.ts';

const tree = dateAsGiven(parseNewick(nineTips.newick), nineTips.rootAgeMa);

// joint predictions of two missing tips by generalised least squares, R 4.2.2, as in tests/reference/nine-tips.ts
const known = [
  {
    model: 'brownian',
    withError: false,
    rate: 0.0040034655212584265,
    covariance: 0.0015671961413860997,
    variance: 0.11305384363976088,
  },
  {
    model: 'brownian',
    withError: true,
    rate: 0.0038345921414526863,
    covariance: 0.0017097261670189687,
    variance: 0.10899867187913385,
  },
  {
    model: 'trend',
    withError: false,
    rate: 0.00043784283856939776,
    covariance: 0.000161506786438212,
    variance: 0.012365096185449785,
  },
  {
    model: 'trend',
    withError: true,
    rate: 0.0003681898440229943,
    covariance: 0.0004884053335312132,
    variance: 0.011084661889532572,
  },
] as const;

test.each(known)('two missing tips vary together as by dense algebra: $model, error $withError', (row) => {
  const observations = Object.entries(nineTips.value)
    .filter(([taxon]) => taxon !== 'G' && taxon !== 'C')
    .map(([taxon, mean]) => ({
      taxon,
      mean,
      variance: row.withError ? nineTips.standardError[taxon as keyof typeof nineTips.value] ** 2 : 0,
    }));
  const network = buildNetwork(tree, observations);
  const at = (label: string) => network.nodeOf[tree.label.indexOf(label)]!;
  const grid = {
    rates: Float64Array.of(row.rate),
    weights: Float64Array.of(1),
    centre: 0,
    width: 1,
    firstStep: 0,
    step: 1,
  };
  const model: ModelName = row.model;
  const atRate = (state: AtRate) => {
    const [fromG, fromC] = [new Float64Array(network.parent.length), new Float64Array(network.parent.length)];
    covariancesWith(state, at('G'), fromG);
    covariancesWith(state, at('C'), fromC);
    expect(fromG[at('C')]).toBeCloseTo(row.covariance, 11);
    expect(fromC[at('G')]).toBeCloseTo(row.covariance, 11);
    expect(fromG[at('G')]).toBeCloseTo(row.variance, 10);
    expect(fromG[at('G')]).toBeCloseTo(beliefOf(state, { node: at('G'), upMa: 0 }).variance, 12);
    expect(fromG[at('A')]! ** 2).toBeLessThan(row.withError ? 1 : 1e-30);
  };
  readAtRates({ model, network, grid, effort: 'full' }, { atRate, result: () => undefined });
});
