import { darwins, independentPairs, type ChangeRate, type TipPair } from '../../../analysis/trend/index.ts';
import type { DatedLineageTree } from './date-trees.ts';
import { observationsIn, type TraitEvidence } from './estimate-lineage-trait.ts';

/** How fast a length changed between pairs of relatives whose paths share no branch. */
export interface PairRate {
  pair: TipPair;
  /** Darwins, without direction: neither relative came of the other. */
  change: ChangeRate;
}

/** Rates between independent pairs on the reference tree; undefined for what is not a length or size on log scale. */
export function ratesOfTrait(
  evidence: TraitEvidence,
  reference: DatedLineageTree | undefined,
): PairRate[] | undefined {
  const { kind, scale } = evidence.observed;
  if (!reference || scale.kind !== 'log' || (kind.kind !== 'length' && kind.kind !== 'size'))
    return undefined;
  const means = new Map(observationsIn(reference.taxa, evidence).map((each) => [each.taxon, each]));
  const sampleOf = (taxon: string) => {
    const { mean, variance } = means.get(taxon)!;
    return { mean: Math.exp(mean), logDeviation: Math.sqrt(variance), n: 1 };
  };
  return independentPairs(reference.dated, new Set(means.keys()))
    .filter(({ pathMyr }) => pathMyr > 0)
    .map((pair) => {
      const change = darwins(sampleOf(pair.one), sampleOf(pair.other), pair.pathMyr);
      return { pair, change: { ...change, rate: Math.abs(change.rate) } };
    });
}
