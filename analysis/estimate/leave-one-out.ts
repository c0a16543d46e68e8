import type { DatedTree } from '../tree/index.ts';
import { findBrownianFit } from './fit.ts';
import { buildNetwork } from './network.ts';
import type { Observation } from './observation.ts';
import { estimatePlaces } from './posterior.ts';

/** A measured taxon, estimated from the others as if it had not been found. Scale of the model. */
export interface LeftOut {
  readonly taxon: string;
  readonly observed: number;
  readonly median: number;
  /** Interval of the taxon's true mean: what the page shows when a visitor hides it. */
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
 * Estimates each observed taxon from the rest, rate and mean refitted. Empty below five observations, because the rest
 * must be four. Quadratic in taxa.
 */
export function leaveOneOut(tree: DatedTree, observations: readonly Observation[], level: number): LeftOut[] {
  if (observations.length < 5) return [];
  return observations.flatMap((hidden) => {
    const network = buildNetwork(
      tree,
      observations.filter((other) => other !== hidden),
    );
    const fit = findBrownianFit(network);
    if (!fit) return [];
    const place = { node: network.nodeOf[tree.label.indexOf(hidden.taxon)]!, upMa: 0 };
    const [value, reading] = estimatePlaces(fit, [place, place], level, (index) => index * hidden.variance);
    return [describeMiss(hidden, value!, reading!.interval)];
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
