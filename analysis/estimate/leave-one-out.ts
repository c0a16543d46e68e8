import type { DatedTree } from '../tree/index.ts';
import { estimateNodes, type PlacedLimit } from './estimate-nodes.ts';
import { findFit, type ModelName } from './rate/fit.ts';
import type { LimitObservation } from './limits/limit-observation.ts';
import { buildNetwork } from './passes/network.ts';
import type { Observation } from './observation.ts';
import { mixtureAt, summarise, withAddedVariance } from './posterior.ts';

/** A measured taxon, estimated from the others as if it had not been found. Scale of the model. */
export interface LeftOut {
  readonly taxon: string;
  readonly observed: number;
  readonly median: number;
  /** Interval of the taxon's true mean: what a visitor sees who hides it. */
  readonly interval: readonly [number, number];
  /** Interval that the observed mean should fall in, its own sampling variance included. */
  readonly readingInterval: readonly [number, number];
  /** Observed less median. */
  readonly miss: number;
  /** Whether the observed mean lies in `interval`. */
  readonly inside: boolean;
  /** Whether the observed mean lies in `readingInterval`, the fair test of coverage. */
  readonly readingInside: boolean;
}

/**
 * Estimates each observed taxon from the rest by a given model, rate and mean refitted, limits of others kept. Empty below
 * five observations, or six with a trend, because the rest must be four, or five. Quadratic in taxa.
 */
export function leaveOneOut(
  tree: DatedTree,
  observations: readonly Observation[],
  options: {
    readonly level: number;
    readonly seed: string | number;
    readonly model: ModelName;
    readonly limits: readonly LimitObservation[];
  },
): LeftOut[] {
  if (observations.length < (options.model === 'trend' ? 6 : 5)) return [];
  return observations.flatMap((hidden) => {
    const rest = observations.filter((other) => other !== hidden);
    const network = buildNetwork(tree, rest);
    const fit = findFit(network, options.model);
    if (!fit) return [];
    const nodeOfTaxon = (taxon: string) => network.nodeOf[tree.label.indexOf(taxon)]!;
    const node = nodeOfTaxon(hidden.taxon);
    const placed: PlacedLimit[] = options.limits.map((limit) => ({ limit, at: nodeOfTaxon(limit.taxon) }));
    const { median, interval } = estimateNodes(fit, [node], placed, options).values[0]!;
    const reading = withAddedVariance(mixtureAt(fit, { node, upMa: 0 }), hidden.variance);
    return [describeMiss(hidden, { median, interval }, summarise(reading, options.level).interval)];
  });
}

function describeMiss(
  hidden: Observation,
  { median, interval }: { median: number; interval: readonly [number, number] },
  readingInterval: readonly [number, number],
): LeftOut {
  const { taxon, mean: observed } = hidden;
  const within = ([low, high]: readonly [number, number]) => observed >= low && observed <= high;
  return {
    taxon,
    observed,
    median,
    interval,
    readingInterval,
    miss: observed - median,
    inside: within(interval),
    readingInside: within(readingInterval),
  };
}
