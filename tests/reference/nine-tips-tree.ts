import { dateAsGiven, parseNewick } from '../../analysis/tree/index.ts';
import { nineTips } from './nine-tips.ts';

/** The tree of the nine tips, with its published root age. */
export const nineTipsTree = dateAsGiven(parseNewick(nineTips.newick), nineTips.rootAgeMa);

/** Observations of the nine tips but the missing ones, exact or with their standard errors. */
export function observeNineTips(missing: readonly string[], withError: boolean) {
  return Object.entries(nineTips.value)
    .filter(([taxon]) => !missing.includes(taxon))
    .map(([taxon, mean]) => ({
      taxon,
      mean,
      variance: withError ? nineTips.standardError[taxon as keyof typeof nineTips.value] ** 2 : 0,
    }));
}
