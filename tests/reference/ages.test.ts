import {
  ageMeanMa,
  ageQuantileMa,
  ageSigmaMa,
  interpolateAge,
  intervalBetween,
  weightedMean,
  type HorizonAge,
} from '../../analysis/ages/index.ts';
import { chiSquareQuantile } from '../../analysis/statistics/index.ts';
import { holdToAccount, type Part } from './account.ts';
import known from './values/ages.json' with { type: 'json' };

const { ages } = known;

function dates({ x, sigma }: { readonly x: readonly number[]; readonly sigma: readonly number[] }): Part {
  const found = weightedMean(x.map((ageMa, k) => ({ ageMa, sigmaMa: sigma[k]! })));
  const df = found.degreesOfFreedom;
  return {
    weightedMean: found.meanMa,
    sigmaInternal: found.internalSigmaMa,
    MSWD: found.mswd,
    sigmaExternal: found.internalSigmaMa * Math.sqrt(found.mswd),
    df,
    pFit: found.fitProbability,
    mswd95: [0.025, 0.975].map((probability) => chiSquareQuantile(probability, df) / df),
  };
}

function stage({ older, younger }: { readonly older: number; readonly younger: number }): Part {
  const age: HorizonAge = { kind: 'uniform', fromMa: older, toMa: younger };
  return {
    mid: ageMeanMa(age),
    sd_uniform: ageSigmaMa(age),
    q025: ageQuantileMa(age, 0.025),
    q975: ageQuantileMa(age, 0.975),
  };
}

holdToAccount({
  name: 'ages',
  values: known,
  given: [
    'ages/*/x',
    'ages/*/sigma',
    'ages/stageUniform/*/older',
    'ages/stageUniform/*/younger',
    'ages/stageWithBoundaryError/stage',
    'ages/stageWithBoundaryError/base',
    'ages/stageWithBoundaryError/baseSigma',
    'ages/stageWithBoundaryError/top',
    'ages/stageWithBoundaryError/topSigma',
    'ages/interpolation/tuffHeights',
    'ages/interpolation/tuffAges',
    'ages/interpolation/tuffSigma',
    'ages/interpolation/fossilHeight',
    'ages/difference/s1',
    'ages/difference/s2',
    'ages/difference/rho',
  ],
  described: {
    'ages/stageWithBoundaryError/note': 'how the errors of the ends are read',
    'ages/difference/note': 'what the case is there to show',
    'ages/decay': 'authors give dates, not isotope ratios: laboratories turn one into the other',
  },
  checks: [
    {
      claim: 'weighted means of dates, and how much they scatter',
      at: 'ages',
      within: 1e-10,
      answer: () => ({ weighted: dates(ages.weighted), overdispersed: dates(ages.overdispersed) }),
    },
    {
      claim: 'a bed of which only the stage is known',
      at: 'ages/stageUniform',
      within: 1e-14,
      answer: () =>
        Object.fromEntries(Object.entries(ages.stageUniform).map(([name, ends]) => [name, stage(ends)])),
    },
    {
      claim: 'a stage whose ends have errors of their own',
      at: 'ages/stageWithBoundaryError',
      within: 1e-13,
      answer: () => {
        const { base, baseSigma, top, topSigma } = ages.stageWithBoundaryError;
        const age: HorizonAge = {
          kind: 'uniform',
          fromMa: base,
          toMa: top,
          fromSigmaMa: baseSigma,
          toSigmaMa: topSigma,
        };
        return { mean: ageMeanMa(age), sd: ageSigmaMa(age), var: ageSigmaMa(age) ** 2 };
      },
    },
    {
      claim: 'a find between two dated tuffs',
      at: 'ages/interpolation',
      within: 1e-13,
      answer: () => {
        const { tuffHeights, tuffAges, tuffSigma, fossilHeight } = ages.interpolation;
        const beds = tuffHeights.map((heightM, k) => ({
          heightM,
          ageMa: tuffAges[k]!,
          sigmaMa: tuffSigma[k]!,
        }));
        const found = interpolateAge(beds, fossilHeight)!;
        return { age: found.ageMa, sigma: found.sigmaMa, accumulation_m_per_Myr: found.metresPerMyr };
      },
    },
    {
      claim: 'the time between two levels with an error in common',
      at: 'ages/difference',
      within: 1e-13,
      answer: () => {
        const { s1, s2, rho } = ages.difference;
        // one date that both ages rest on, and one for each alone
        const common = rho * s1 * s2;
        const beds = [common, s1 ** 2 - common, s2 ** 2 - common].map((variance, heightM) => ({
          heightM,
          ageMa: 10 - heightM,
          sigmaMa: Math.sqrt(variance),
        }));
        const level = (ageMa: number, sigmaMa: number, shares: readonly number[]) => ({
          ageMa,
          sigmaMa,
          metresPerMyr: NaN,
          shares,
        });
        return { sd: intervalBetween(beds, level(10, s1, [1, 1, 0]), level(9, s2, [1, 0, 1])).sigmaMyr };
      },
    },
  ],
});
