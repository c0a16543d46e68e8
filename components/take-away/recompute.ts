import { estimateTips, type Observation, type RelativeWeight } from '../../analysis/estimate/index.ts';
import { fromScale } from '../../analysis/traits/index.ts';
import { buildTree, datedTree, type DatedTree } from '../../analysis/tree/index.ts';
import type { LiveData } from './live-data.ts';
import type { Miss } from '../../analysis/statements/index.ts';

/** The numbers that live data need for an estimate. */
export type LiveNumbers = Pick<
  LiveData,
  'tree' | 'measured' | 'limits' | 'unmeasured' | 'model' | 'level' | 'scale' | 'seed'
>;

/** What relatives say of one animal, in the trait's unit. */
export interface Recomputed {
  taxon: string;
  median: number;
  interval: [number, number];
  /** The interval is no narrower than without any tree, so that there is nothing to print. */
  open: boolean;
  /** Weights of measured animals, largest first. */
  relatives: readonly RelativeWeight[];
}

/**
 * What relatives say of the hidden animals and of those that nobody measured, by animal, with the hidden ones unseen; undefined
 * where too few are left, or where those left do not allow a fit.
 */
export function estimateWithout(
  live: LiveNumbers,
  hidden: ReadonlySet<string>,
): Map<string, Recomputed> | undefined {
  const asked = [...live.measured.taxon.filter((taxon) => hidden.has(taxon)), ...live.unmeasured];
  const answer = ask(live, hidden, asked);
  if (!answer) return undefined;
  const back = (value: number) => fromScale(live.scale, value);
  const blind = answer.treeBlind[1] - answer.treeBlind[0];
  return new Map(
    answer.nodes.map(({ label, median, interval: [low, high], relatives = [] }): [string, Recomputed] => [
      label,
      {
        taxon: label,
        median: back(median),
        interval: [back(low), back(high)],
        open: high - low >= blind,
        relatives,
      },
    ]),
  );
}

/** One measured animal, worked out from those that are neither hidden nor itself; undefined where too few are left. */
export function findMiss(live: LiveNumbers, hidden: ReadonlySet<string>, taxon: string): Miss | undefined {
  const answer = ask(live, new Set([...hidden, taxon]), [taxon]);
  if (!answer) return undefined;
  const { median, interval } = answer.nodes[0]!;
  const mean = live.measured.mean[live.measured.taxon.indexOf(taxon)]!;
  const back = (value: number) => fromScale(live.scale, value);
  return {
    taxon,
    observed: back(mean),
    median: back(median),
    interval: [back(interval[0]), back(interval[1])],
    inside: interval[0] <= mean && mean <= interval[1],
  };
}

function ask(live: LiveNumbers, hidden: ReadonlySet<string>, only: readonly string[]) {
  const { measured, limits, model, level, seed } = live;
  const observations = measured.taxon.flatMap((taxon, index): Observation[] =>
    hidden.has(taxon) ? [] : [{ taxon, mean: measured.mean[index]!, variance: measured.variance[index]! }],
  );
  const twigs = limits.map(({ twig, ...limit }) => ({ ...limit, twigVariance: twig }));
  return estimateTips({ tree: treeOf(live), observations, limits: twigs, model, level, seed, only });
}

/** Trees are built once: a visitor asks many times. */
const trees = new WeakMap<LiveNumbers['tree'], DatedTree>();

export function treeOf({ tree }: LiveNumbers): DatedTree {
  const known = trees.get(tree);
  if (known) return known;
  const bare = buildTree(Int32Array.from(tree.parent), new Float64Array(tree.parent.length), tree.taxon);
  const dated = datedTree(bare, Float64Array.from(tree.ageMa));
  trees.set(tree, dated);
  return dated;
}
