import { holdToAccount } from './account.ts';
import { censoredBest, censoredLogLikelihood } from './censored.ts';
import {
  cutIntegrated,
  cutNormal,
  cutStudent,
  cutVariance,
  joint,
  limited,
  standard,
  withoutG,
} from './limit-answers.ts';
import limits from './values/limits.json' with { type: 'json' };

const free = withoutG(false);
const three = ({ mean, variance, low, median, high }: ReturnType<typeof limited>) => ({
  mean,
  var: variance,
  q: [low, median, high],
});

holdToAccount({
  name: 'limits',
  values: limits,
  given: [
    'newick',
    'y',
    'se',
    'lowerBound/*/measurementError',
    'lowerBound/*/tip',
    'lowerBound/*/bound',
    'lowerBound/*/L',
    'twoSided/L',
    'twoSided/U',
    'upperBound/U',
    'joint/missing',
    'joint/s2',
    'joint/bound_G',
    'censoredLikelihood/L',
    'censoredLikelihood/logLik_at/*/mu',
    'censoredLikelihood/logLik_at/*/sigma2',
  ],
  checks: [
    {
      claim: 'a floor on G cuts the normal distribution at the best rate',
      at: 'lowerBound',
      within: 1e-9,
      answer: () => limits.lowerBound.map(cutNormal),
    },
    {
      claim: 'the variance above a floor by quadrature is that of the formula',
      at: 'lowerBound',
      within: 1e-9,
      answer: () => limits.lowerBound.map((row) => ({ normal: { varByFormula: cutVariance(row) } })),
    },
    {
      // far in the tail the package's own variance differs from its formula in the ninth digit; the formula has the digits
      claim: 'the variance above a floor is that of a package for cut-off normal distributions',
      at: 'lowerBound',
      within: 2e-9,
      answer: () => limits.lowerBound.map((row) => ({ normal: { var: cutVariance(row) } })),
    },
    {
      claim: 'a floor on G cuts a t distribution at the best rate',
      at: 'lowerBound',
      within: 1e-9,
      answer: () => limits.lowerBound.map(cutStudent),
    },
    {
      claim: 'a floor on G cuts the distribution whose rate is integrated, which is the t distribution',
      at: 'lowerBound',
      within: 1e-6,
      answer: () => limits.lowerBound.filter(({ measurementError }) => !measurementError).map(cutIntegrated),
    },
    {
      claim: 'a floor with a ceiling cuts both ways',
      at: 'twoSided',
      within: 1e-9,
      answer: () =>
        three(limited(free.fit, free.node, { atLeast: limits.twoSided.L, atMost: limits.twoSided.U })),
    },
    {
      claim: 'a ceiling cuts the other way',
      at: 'upperBound',
      within: 1e-9,
      answer: () => three(limited(free.fit, free.node, { atMost: limits.upperBound.U })),
    },
    {
      claim: 'a floor on G moves C as the joint distribution says',
      at: 'joint',
      within: 1e-9,
      answer: joint,
    },
    {
      claim: 'a likelihood that the limit is part of',
      at: 'censoredLikelihood/logLik_at',
      within: 1e-11,
      answer: () =>
        limits.censoredLikelihood.logLik_at.map((row) =>
          'll_L2.4' in row
            ? { 'll_L2.4': censoredLogLikelihood(row.mu, row.sigma2, 2.4) }
            : { ll: censoredLogLikelihood(row.mu, row.sigma2, limits.censoredLikelihood.L) },
        ),
    },
    {
      claim: 'the largest of such likelihoods, and where it lies',
      at: 'censoredLikelihood/ML',
      within: 1e-5,
      answer: () => censoredBest(limits.censoredLikelihood.L),
    },
    {
      claim: 'the standard normal distribution cut off at a floor',
      at: 'standardTruncatedNormal',
      within: 1e-9,
      answer: () => limits.standardTruncatedNormal.map(standard),
    },
  ],
});
