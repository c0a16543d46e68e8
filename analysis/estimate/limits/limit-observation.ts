import type { Bounds } from './bounded-end.ts';

/** What a broken specimen says of its own value, on the scale of the model. It hangs on its taxon by a twig of its own. */
export interface LimitObservation {
  readonly taxon: string;
  readonly specimen: string;
  /** The bare limit, before its error: the error is in the twig. At least one of the two. */
  readonly atLeast?: number | undefined;
  readonly atMost?: number | undefined;
  /** Variance of a specimen about its taxon's mean plus the squared error of the limit. */
  readonly twigVariance: number;
}

/** A limit with the node of the network that its taxon is. */
export interface PlacedLimit {
  readonly limit: LimitObservation;
  readonly at: number;
}

/** The ends that a limit sets. Throws for none, ends in the wrong order, or a variance below 0, naming the specimen. */
export function boundsOf({ specimen, atLeast, atMost, twigVariance }: LimitObservation): Bounds {
  const [low, high] = [atLeast ?? -Infinity, atMost ?? Infinity];
  if (low === -Infinity && high === Infinity) throw new Error(`limit of "${specimen}" says nothing`);
  if (!(low < high))
    throw new Error(`limit of "${specimen}" must have its lower end below its upper, got ${low} and ${high}`);
  if (!(twigVariance >= 0 && twigVariance < Infinity))
    throw new Error(`twig variance of "${specimen}" must be 0 or more, got ${twigVariance}`);
  return { low, high };
}
