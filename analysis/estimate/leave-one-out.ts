import type { DatedTree } from '../tree/index.ts';
import { readNodes } from './estimate-nodes.ts';
import { findFit, type ModelName } from './rate/fit.ts';
import type { LimitObservation, PlacedLimit } from './limits/limit-observation.ts';
import { buildNetwork } from './passes/network.ts';
import { both, readAtRates } from './passes/per-rate.ts';
import type { Observation } from './observation.ts';
import { readMixture, summarise, withAddedVariance, type ValueEstimate } from './posterior.ts';

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
    const readings = both(readNodes(fit, [node], placed, options), readMixture(fit, { node, upMa: 0 }));
    const [{ values }, mixture] = readAtRates(fit, readings);
    const reading = summarise(withAddedVariance(mixture, hidden.variance), options.level);
    return [describeMiss(hidden, values[0]!, reading.interval)];
  });
}

function describeMiss(
  hidden: Observation,
  { median, interval }: ValueEstimate,
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
