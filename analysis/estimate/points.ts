import type { DatedTree } from '../tree/index.ts';
import { findFit, type ModelName } from './rate/fit.ts';
import { buildNetwork } from './passes/network.ts';
import type { Observation } from './observation.ts';
import { readAtRates } from './passes/per-rate.ts';
import { readPlaces, type ValueEstimate } from './posterior.ts';

/** A point on the branch above a node of the tree, at an age between the two ends of the branch. */
export interface BranchPoint {
  readonly node: number;
  readonly ageMa: number;
}

/**
 * Estimates of points along branches, as for a line across the tree at one age; limits are not in them. Undefined where
 * there are fewer than four observations or no fit. Throws for a point off its branch.
 */
export function findPointEstimates(
  question: {
    readonly tree: DatedTree;
    readonly observations: readonly Observation[];
    readonly level?: number;
    readonly model?: ModelName;
  },
  points: readonly BranchPoint[],
): ValueEstimate[] | undefined {
  const { tree, observations, level = 0.95, model = 'brownian' } = question;
  if (observations.length < 4) return undefined;
  const network = buildNetwork(tree, observations);
  const fit = findFit(network, model);
  if (!fit) return undefined;
  const places = points.map(({ node, ageMa }) => {
    const upMa = ageMa - tree.ageMa[node]!;
    if (!(upMa >= 0 && upMa <= tree.branchLength[node]!))
      throw new Error(`age ${ageMa} Ma is not on the branch above node ${node}`);
    const here = network.nodeOf[node]!;
    // a zero twig has become its parent's node: the point is that node
    const isTwig = node + 1 < tree.parent.length && here === network.nodeOf[tree.parent[node]!];
    return { node: here, upMa: isTwig ? 0 : upMa };
  });
  return readAtRates(fit, readPlaces(fit, places, level));
}

/** Nodes whose branch is cut by a line across the tree at an age: the lineages that lived then, by this tree. */
export function branchesAt(tree: DatedTree, ageMa: number): number[] {
  const cut: number[] = [];
  for (let node = 0; node < tree.parent.length - 1; node++)
    if (tree.ageMa[node]! <= ageMa && tree.ageMa[tree.parent[node]!]! > ageMa) cut.push(node);
  return cut;
}
