import type { PlanePoint } from './plane.ts';
import { centred, preShape, squaredGap, superimpose } from './procrustes.ts';
import { spreadOf } from './spread.ts';

/** Shapes laid on their own mean. */
export interface GeneralSuperimposition {
  /** Mean shape, centred; of centroid size 1 unless sizes are kept. */
  readonly mean: readonly PlanePoint[];
  readonly shapes: readonly (readonly PlanePoint[])[];
  readonly centroidSizes: readonly number[];
  readonly rounds: number;
}

/** Relative change of the mean under which superimposing stops: no printed digit moves any more. */
const settledShare = 1e-13;
const mostRounds = 200;

/** What becomes of size: kept, one for every shape (the partial fit), or fitted to the mean (the full fit). */
export type SizeRule = 'kept' | 'one' | 'fitted';

/**
 * Generalised Procrustes superimposition: every shape is laid on the mean and the mean taken anew until it rests
 * (Gower 1975, Psychometrika 40: 33–51; partial and full fit as in Dryden and Mardia 2016, Statistical Shape Analysis,
 * chapter 7). Reflection is refused. Cost grows with rounds times landmarks. Throws without shapes, for unlike numbers
 * of landmarks, and where the mean does not rest.
 */
export function generalSuperimposition(
  shapes: readonly (readonly PlanePoint[])[],
  size: SizeRule = 'one',
): GeneralSuperimposition {
  if (shapes.length === 0) throw new Error('a mean shape requires at least one shape');
  const starts = shapes.map((shape) => (size === 'kept' ? centred(shape) : preShape(shape)));
  const rules = { scaling: size === 'fitted', reflection: 'refuse' } as const;
  let mean: readonly PlanePoint[] = starts[0]!;
  for (let rounds = 1; rounds <= mostRounds; rounds++) {
    const laid = starts.map((shape) => superimpose(shape, mean, rules).points);
    const next = meanOf(laid, size);
    const change = Math.sqrt(squaredGap(next, mean));
    mean = next;
    if (change <= settledShare * spreadOf(mean))
      return { mean, shapes: laid, centroidSizes: shapes.map(spreadOf), rounds };
  }
  throw new Error(`the mean shape did not rest after ${mostRounds} rounds`);
}

function meanOf(shapes: readonly (readonly PlanePoint[])[], size: SizeRule): PlanePoint[] {
  const mean = shapes[0]!.map((_, landmark): PlanePoint => [
    shapes.reduce((sum, shape) => sum + shape[landmark]![0], 0) / shapes.length,
    shapes.reduce((sum, shape) => sum + shape[landmark]![1], 0) / shapes.length,
  ]);
  return size === 'kept' ? mean : preShape(mean);
}
