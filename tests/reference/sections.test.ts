import { correctedCriterion } from '../../analysis/estimate/index.ts';
import {
  fitSection,
  samplingVariances,
  type SectionForm,
  type SectionModel,
} from '../../analysis/trend/index.ts';
import {
  jointStasis,
  jointWalk,
  stepsOfStasis,
  stepsOfWalk,
  type SectionSeries,
} from '../../analysis/trend/section-likelihoods.ts';
import { holdToAccount, type Check, type Part } from './account.ts';
import { levelsOf, referenceSections, type ReferenceSection } from './section-levels.ts';
import sections from './values/sections.json' with { type: 'json' };

type Errors = 'pooled' | 'unpooled';

function seriesOf(section: ReferenceSection, errors: Errors): SectionSeries {
  return { ...section, samplingVariances: samplingVariances(levelsOf(section), errors === 'pooled') };
}

/** Likelihoods at the parameters that the file fixes. */
function fixed(section: ReferenceSection, errors: Errors): Part {
  const series = seriesOf(section, errors);
  const { joint, steps } = section.results[errors].fixed;
  const walk = (
    likelihood: typeof jointWalk,
    { variance, ...means }: { variance: number; level?: number; meanStep?: number },
  ) => ({
    logLikelihood: likelihood(series, variance, means.meanStep !== undefined, means).logLikelihood,
  });
  const rest = (likelihood: typeof jointStasis, level: number, variance = 0) => ({
    logLikelihood: likelihood(series, variance, { level }).logLikelihood,
  });
  return {
    joint: {
      'unbiased-walk': walk(jointWalk, joint['unbiased-walk']),
      'directional-walk': walk(jointWalk, joint['directional-walk']),
      stasis: rest(jointStasis, joint.stasis.level, joint.stasis.variance),
      'stasis-without-scatter': rest(jointStasis, joint['stasis-without-scatter'].level),
    },
    steps: {
      'unbiased-walk': walk(stepsOfWalk, steps['unbiased-walk']),
      'directional-walk': walk(stepsOfWalk, steps['directional-walk']),
      stasis: rest(stepsOfStasis, steps.stasis.level, steps.stasis.variance),
    },
  };
}

function fitted(section: ReferenceSection, errors: Errors, form: SectionForm): SectionModel[] {
  const models = fitSection(levelsOf(section), { form, pooled: errors === 'pooled' });
  if (typeof models === 'string') throw new Error(models);
  return models;
}

/** Stasis whose levels all have one true mean: no scatter but that of sampling. */
function withoutScatter(section: ReferenceSection, errors: Errors) {
  const { logLikelihood, level } = jointStasis(seriesOf(section, errors), 0);
  return { logLikelihood, level: level!, aicc: correctedCriterion(logLikelihood, 1, section.means.length)! };
}

const byName = (models: readonly SectionModel[], of: (model: SectionModel) => Part) =>
  Object.fromEntries(models.map((model) => [model.name, of(model)]));

function likelihoods(section: ReferenceSection, errors: Errors): Part {
  const told = ({ logLikelihood, parameters, aicc }: SectionModel) => ({ logLikelihood, parameters, aicc });
  const { logLikelihood, aicc } = withoutScatter(section, errors);
  return {
    joint: {
      ...byName(fitted(section, errors, 'joint'), told),
      'stasis-without-scatter': { logLikelihood, parameters: 1, aicc },
    },
    steps: byName(fitted(section, errors, 'steps'), told),
  };
}

function parameters(section: ReferenceSection, errors: Errors): Part {
  const told = ({ variance, level, meanStep }: SectionModel) => ({ variance, level, meanStep });
  return {
    joint: {
      ...byName(fitted(section, errors, 'joint'), told),
      'stasis-without-scatter': { level: withoutScatter(section, errors).level },
    },
    steps: byName(fitted(section, errors, 'steps'), told),
  };
}

function weights(section: ReferenceSection, errors: Errors): Part {
  const three = fitted(section, errors, 'joint');
  const criteria = {
    ...byName(three, ({ aicc }) => aicc),
    'stasis-without-scatter': withoutScatter(section, errors).aicc,
  };
  const least = Math.min(...Object.values(criteria).map(Number));
  const raw = Object.entries(criteria).map(
    ([name, aicc]) => [name, Math.exp((least - Number(aicc)) / 2)] as const,
  );
  const sum = raw.reduce((total, [, weight]) => total + weight, 0);
  return {
    joint: byName(three, ({ weight }) => weight),
    jointOfFour: Object.fromEntries(raw.map(([name, weight]) => [name, weight / sum])),
    steps: byName(fitted(section, errors, 'steps'), ({ weight }) => weight),
  };
}

/** The pooled variance among individuals, by the sampling variance of a level and its count. */
function pooledVariance(section: ReferenceSection): number {
  return samplingVariances(levelsOf(section), true)[0]! * section.n[0]!;
}

const checks = Object.entries(referenceSections).flatMap(([name, section]): Check[] => [
  {
    claim: `${name}: the variance among individuals that all levels share`,
    at: `series/${name}`,
    within: 1e-14,
    answer: () => ({ pooledVariance: pooledVariance(section) }),
  },
  ...(['pooled', 'unpooled'] as const).flatMap((errors): Check[] => {
    const at = `series/${name}/results/${errors}`;
    return [
      {
        claim: `${name}, ${errors}: sampling variances of the levels`,
        at,
        within: 1e-14,
        answer: () => ({ samplingVariances: samplingVariances(levelsOf(section), errors === 'pooled') }),
      },
      {
        claim: `${name}, ${errors}: likelihoods at given parameters`,
        at: `${at}/fixed`,
        within: 1e-12,
        answer: () => fixed(section, errors),
      },
      {
        claim: `${name}, ${errors}: largest likelihoods and criteria`,
        at: `${at}/best`,
        within: 1e-8,
        answer: () => likelihoods(section, errors),
      },
      // a variance that the reference leaves at 1e-11 or less lies on its bound of 0
      {
        claim: `${name}, ${errors}: parameters at the largest likelihoods`,
        at: `${at}/best`,
        within: 1e-6,
        size: 1e-4,
        answer: () => parameters(section, errors),
      },
      {
        claim: `${name}, ${errors}: weights of evidence`,
        at: `${at}/weights`,
        within: 1e-7,
        answer: () => weights(section, errors),
      },
    ];
  }),
]);

holdToAccount({
  name: 'sections',
  values: sections,
  given: [
    'series/*/elapsedMyr',
    'series/*/means',
    'series/*/variances',
    'series/*/n',
    'series/*/results/*/fixed/*/*/level',
    'series/*/results/*/fixed/*/*/variance',
    'series/*/results/*/fixed/*/*/meanStep',
  ],
  checks,
});
