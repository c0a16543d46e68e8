import { findPointEstimates, type Observation } from '../../analysis/estimate/index.ts';
import { fromScale } from '../../analysis/traits/index.ts';
import { findBranch, ribbonId } from '../lineage/focus.ts';
import type { LineageView } from '../lineage/view.ts';
import { findNumbers, nodesFor } from '../take-away/find-live-data.ts';
import { treeOf } from '../take-away/recompute.ts';
import type { Ribbon } from './scene/ribbons.ts';

/** Places along a branch at which its ribbon is worked out, its ends among them. */
const stops = 9;

/**
 * Ribbons of the branches that a story names: the engine's own 95% interval at places along each. Limits of broken specimens are
 * not in them. A branch that the tree lacks has none; nor has any branch where the trait has no estimates.
 */
export function findRibbons({ lineage, trait }: LineageView, branches: readonly string[]): Ribbon[] {
  const tree = lineage.trees.find(({ id }) => id === trait.model?.tree);
  const numbers =
    tree && branches.length > 0 ? findNumbers(trait, { ...tree, nodes: nodesFor(trait, tree) }) : undefined;
  if (!tree || !numbers) return [];
  const { taxon, mean, variance } = numbers.measured;
  const observations = taxon.map((each, index): Observation => ({
    taxon: each,
    mean: mean[index]!,
    variance: variance[index]!,
  }));
  const dated = treeOf(numbers);
  return branches.flatMap((word) => {
    const node = findBranch(word, tree);
    const at = tree.nodes.findIndex(({ id }) => id === node?.id);
    if (!node || at < 0) return [];
    const ages = Array.from(
      { length: stops },
      (_, stop) => dated.ageMa[at]! + (dated.branchLength[at]! * stop) / (stops - 1),
    );
    const points = ages.map((ageMa) => ({
      node: at,
      ageMa: Math.min(ageMa, dated.ageMa[at]! + dated.branchLength[at]!),
    }));
    const found = findPointEstimates({ tree: dated, observations, model: numbers.model }, points);
    if (!found) return [];
    const back = (value: number) => fromScale(numbers.scale, value);
    return {
      id: ribbonId(node.id),
      points: found.map(({ interval: [low, high] }, index) => ({
        ageMa: points[index]!.ageMa,
        low: back(low),
        high: back(high),
      })),
    };
  });
}
