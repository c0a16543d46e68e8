import { dateAsGiven, parseNewick } from '../../analysis/tree/index.ts';
import nineTips from './values/nine-tips.json' with { type: 'json' };

/** The tree of the nine tips, with its root's age. */
export const nineTipsTree = dateAsGiven(parseNewick(nineTips.newick), nineTips.rootAge);

/** Observations of the nine tips but the missing ones, exact or with their standard errors. */
export function observeNineTips(missing: readonly string[], withError: boolean) {
  return Object.entries(nineTips.y)
    .filter(([taxon]) => !missing.includes(taxon))
    .map(([taxon, mean]) => ({
      taxon,
      mean,
      variance: withError ? standardErrorOf(taxon) ** 2 : 0,
    }));
}

/** Standard error of the value of one of the nine tips. */
export function standardErrorOf(taxon: string): number {
  return nineTips.se[taxon as keyof typeof nineTips.se];
}

/** Node of the tree by its label. */
export function nineTipsNode(label: string): number {
  return nineTipsTree.label.indexOf(label);
}
