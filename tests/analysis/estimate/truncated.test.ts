import { expect, test } from 'vitest';
import { boundedPoints, drawWithin } from '../../../analysis/estimate/limits/bounded-end.ts';
import { readLimitProbabilities } from '../../../analysis/estimate/limits/limit-probability.ts';
import { mixtureQuantile } from '../../../analysis/estimate/mixture.ts';
import { buildNetwork } from '../../../analysis/estimate/passes/network.ts';
import { readMixture } from '../../../analysis/estimate/posterior.ts';
import { findFit } from '../../../analysis/estimate/rate/fit.ts';
import { nineTipsTree as tree, observeNineTips as observe } from '../../reference/nine-tips-tree.ts';
import { truncatedReference as known } from '../../reference/truncated.ts';
import { readAtRates } from '../../../analysis/estimate/passes/per-rate.ts';

const network = buildNetwork(tree, observe(['G'], false));
const fit = findFit(network, 'brownian')!;
const at = network.nodeOf[tree.label.indexOf('G')]!;

test.each(known.student)(
  'with the rate integrated a floor of $atLeast cuts a t distribution: its share and quantiles are those of the reference',
  ({ atLeast, probability, low, median, high }) => {
    const limit = { taxon: 'G', specimen: 'g', atLeast, twigVariance: 0 };
    expect(
      readAtRates(fit, readLimitProbabilities([{ limit, at }]))[0]!.probability / probability,
    ).toBeCloseTo(1, 6);
    const mixture = readAtRates(fit, readMixture(fit, { node: at, upMa: 0 }));
    const above = (share: number) => mixtureQuantile(mixture, 1 - (1 - share) * probability);
    expect(above(0.025)).toBeCloseTo(low, 6);
    expect(above(0.5)).toBeCloseTo(median, 6);
    expect(above(0.975)).toBeCloseTo(high, 5);
  },
);

test.each(known.student)(
  'the mean above a floor of $atLeast is that of a truncated t distribution',
  ({ atLeast, mean }) => {
    const mixture = readAtRates(fit, readMixture(fit, { node: at, upMa: 0 }));
    let [mass, moment] = [0, 0];
    mixture.weights.forEach((weight, k) => {
      const [centre, variance] = [mixture.means[k]!, mixture.deviations[k]! ** 2];
      const limit = { taxon: 'G', specimen: 'g', atLeast, twigVariance: 0 };
      const one = {
        ...fit,
        grid: { ...fit.grid, rates: fit.grid.rates.slice(k, k + 1), weights: Float64Array.of(1) },
      };
      const share = weight * readAtRates(one, readLimitProbabilities([{ limit, at }]))[0]!.probability;
      const points = boundedPoints(
        centre,
        variance,
        { low: atLeast, high: Infinity },
        { finest: 1, effort: 'full' },
      );
      mass += share;
      moment += share * points.at.reduce((sum, value, i) => sum + value * points.weights[i]!, 0);
    });
    expect(moment / mass).toBeCloseTo(mean, 6);
  },
);

test.each(known.standard)(
  'a standard normal value above $floor has the mean, variance and quantiles of the table',
  ({ floor, mean, variance, low, high }) => {
    const bounds = { low: floor, high: Infinity };
    const { at: values, weights } = boundedPoints(0, 1, bounds, { finest: 1, effort: 'full' });
    const found = values.reduce((sum, value, k) => sum + value * weights[k]!, 0);
    expect(found).toBeCloseTo(mean, 8);
    expect(values.reduce((sum, value, k) => sum + (value - found) ** 2 * weights[k]!, 0)).toBeCloseTo(
      variance,
      7,
    );
    expect(drawWithin(0, 1, bounds, () => 0.975)).toBeCloseTo(low, 9);
    expect(drawWithin(0, 1, bounds, () => 0.025)).toBeCloseTo(high, 9);
  },
);
