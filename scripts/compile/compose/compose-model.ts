import type { AnalysedLineage, AnalysedTrait } from '../analyse/lineage.ts';
import { limitsIn } from '../analyse/estimate-lineage-trait.ts';
import { repeatsOf } from '../analyse/measurement-error.ts';
import type { ObservedTrait } from '../analyse/observe-trait.ts';
import type { CompiledTrait } from '../contract.ts';

/** An answer of the engine that has estimates. */
export type Estimated = Extract<NonNullable<AnalysedTrait['answer']>, { estimated: true }>;

/** The model that was used, what it was compared with, and how limits entered. */
export function composeModel(
  { model, limits }: Estimated,
  tree: string,
  seed: number,
): CompiledTrait['model'] {
  const { method, reported, splitRHat, effectiveSize } = limits;
  return {
    name: model.name,
    tree,
    seed,
    df: model.degreesOfFreedom,
    rateMedian: model.rateMedian,
    rateReml: model.rateReml,
    logLikelihood: model.logLikelihoodMl,
    ...(model.slope
      ? {
          slope: { median: model.slope.median, interval: [model.slope.interval[0], model.slope.interval[1]] },
        }
      : {}),
    limits: {
      method,
      reported,
      ...(splitRHat === undefined ? {} : { splitRHat }),
      ...(effectiveSize === undefined ? {} : { effectiveSize }),
    },
    compared: model.compared.map((each) => ({ ...each })),
  };
}

/** Limits as the estimates take them; none where there are no estimates. */
export function composeTwigs(trait: AnalysedTrait): CompiledTrait['twigs'] {
  const reference = trait.trees.find((tree) => tree.reference);
  if (!reference || !trait.answer?.estimated || trait.answer.limits.method === 'none') return [];
  return limitsIn(reference.taxa, trait).map(({ taxon, specimen, atLeast, atMost, twigVariance }) => ({
    taxon,
    specimen,
    ...(atLeast === undefined ? {} : { atLeast }),
    ...(atMost === undefined ? {} : { atMost }),
    variance: twigVariance,
  }));
}

/** Ages of the nodes of each tree that this trait dates otherwise than the one in view; nothing where there is none. */
export function composeAges(trait: AnalysedTrait, { trees }: AnalysedLineage): Pick<CompiledTrait, 'ages'> {
  const ages = trait.trees.flatMap(({ id, dated }) => {
    const shown = trees.find((tree) => tree.id === id)?.dated.ageMa;
    return shown?.every((age, node) => age === dated.ageMa[node])
      ? []
      : [{ tree: id, ageMa: [...dated.ageMa] }];
  });
  return ages.length > 0 ? { ages } : {};
}

/** Measurement error of a trait from what was read again; what nothing says is null. */
export function composeRepeats({ values, kind }: ObservedTrait): CompiledTrait['repeats'] {
  return repeatsOf(kind, values).map(({ from, measurement, specimens, components }) => ({
    from,
    ...(measurement === undefined ? {} : { measurement }),
    specimens,
    within: components.within,
    df: components.withinDf,
    repeatability: finite(components.repeatability),
    percentError: finite(components.percentError),
  }));
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
