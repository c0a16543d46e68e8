import { findRoot } from '../../analysis/statistics/index.ts';
import { limitProbabilities, type LiveNumbers } from './recompute.ts';

/**
 * The variance by which a limit hangs on its animal. A compiled lineage prints the limit with its error and rounded outward, and
 * how probable relatives find it; the variance is the one that gives just that probability, between the spread within an
 * animal alone and that with an error as large as the whole distance between the bare limit and the printed one. Undefined
 * where none does.
 */
export function findLimitTwig(
  live: Omit<LiveNumbers, 'limits'>,
  limit: Omit<LiveNumbers['limits'][number], 'twig'>,
  grounds: { spread: number; distance: number; probability: number },
): number | undefined {
  const { spread, distance, probability } = grounds;
  const beyond = (twig: number) => {
    const found = limitProbabilities({ ...live, limits: [{ ...limit, twig }] }).get(limit.specimen);
    return found === undefined ? NaN : found - probability;
  };
  const [least, most] = [spread, spread + distance ** 2];
  const [atLeast, atMost] = [beyond(least), beyond(most)];
  if (!Number.isFinite(atLeast) || !Number.isFinite(atMost)) return undefined;
  if (Math.abs(atLeast) < settled) return least;
  if (Math.abs(atMost) < settled) return most;
  return atLeast > 0 === atMost > 0 ? undefined : findRoot(beyond, least, most);
}

/** Probabilities are compiled at twelve significant digits. */
const settled = 1e-11;
