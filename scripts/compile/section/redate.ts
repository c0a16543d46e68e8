import { drawAges } from '../../../analysis/ages/index.ts';
import { datesMoved, type DatesMoved, type SectionLevel } from '../../../analysis/trend/index.ts';
import { distributionOf } from '../analyse/age-draws.ts';
import type { ResolvedAge } from '../resolve/ages.ts';
import type { DatedSummary } from './change-rates.ts';
import type { SectionBed } from './date-levels.ts';
import { leastWeight } from './weigh-models.ts';

/**
 * Weights of the models over sampled dates of the beds: each bed is drawn within its own error, keyed by its id as the
 * spans of a tree are, younger than those below it; the ages of the levels follow on the same straight lines. Undefined
 * without draws or where nothing can be weighed.
 */
export function weighOverDates(
  levels: readonly SectionLevel[],
  series: readonly DatedSummary[],
  grounds: {
    readonly beds: readonly SectionBed[];
    readonly horizonAges: ReadonlyMap<string, ResolvedAge>;
    readonly seed: number;
    readonly draws: number;
  },
): DatesMoved | undefined {
  const { beds, horizonAges, seed, draws } = grounds;
  if (levels.length < 3) return undefined;
  const ids = beds.map(({ level }) => level.horizon!);
  const drawn = {
    beds: new Map(ids.map((id) => [id, distributionOf(horizonAges.get(id)!)])),
    below: new Map(ids.map((id, index) => [id, ids.slice(0, index)])),
  };
  const shares = series.map(({ age }) => age.shares);
  return datesMoved({
    levels,
    draws,
    leastWeight,
    elapsedOfDraw(draw) {
      // Draw 0 stands for the reference ages wherever ages are sampled.
      const agesMa = drawAges(drawn, seed, draw + 1);
      const ofLevels = shares.map((own) =>
        own.reduce((sum, share, bed) => sum + share * agesMa.get(ids[bed]!)!, 0),
      );
      return ofLevels.map((ageMa) => ofLevels[0]! - ageMa);
    },
  });
}
