import { intervalBetween, type LevelAge } from '../../../analysis/ages/index.ts';
import {
  darwins,
  findLevelSummary,
  haldanes,
  pooledLogDeviation,
  type ChangeRate,
  type RateSample,
} from '../../../analysis/trend/index.ts';
import type { SectionBed } from './date-levels.ts';
import type { SummarisedLevel } from './summarise-levels.ts';

/** Change between two levels; a rate is never given without the time it was taken over. */
export interface LevelChange {
  readonly from: string;
  readonly to: string;
  readonly intervalMyr: number;
  readonly intervalSigmaMyr: number;
  readonly darwins: ChangeRate;
  readonly haldanes?: ChangeRate;
}

/** Levels that have a mean and an age, from the oldest. */
export interface DatedSummary {
  readonly summarised: SummarisedLevel;
  readonly age: LevelAge;
}

/** Time from the oldest level to the youngest, with the error that the dates leave in it; undefined with fewer than two. */
export function findSectionSpan(
  levels: readonly DatedSummary[],
  beds: readonly SectionBed[],
): { readonly myr: number; readonly sigmaMyr: number } | undefined {
  const [first, last] = [levels[0], levels.at(-1)];
  return first && last && first !== last ? intervalBetween(beds, first.age, last.age) : undefined;
}

/** Change from each level to the next, and over the whole; levels of one age have none, nor have those without a spread. */
export function changesBetween(
  levels: readonly DatedSummary[],
  beds: readonly SectionBed[],
  generationYears: number | undefined,
): { readonly whole: LevelChange | undefined; readonly steps: LevelChange[] } {
  const [first, last] = [levels[0], levels.at(-1)];
  const change = (lower: DatedSummary, upper: DatedSummary) =>
    findChange(lower, upper, beds, generationYears);
  return {
    whole: first && last && first !== last ? change(first, last) : undefined,
    steps: levels.slice(1).flatMap((upper, index) => change(levels[index]!, upper) ?? []),
  };
}

function findChange(
  lower: DatedSummary,
  upper: DatedSummary,
  beds: readonly SectionBed[],
  generationYears: number | undefined,
): LevelChange | undefined {
  const [earlier, later] = [findRateSample(lower.summarised), findRateSample(upper.summarised)];
  const { myr, sigmaMyr } = intervalBetween(beds, lower.age, upper.age);
  if (!earlier || !later || !(myr > 0)) return undefined;
  const inGenerations = generationYears !== undefined && pooledLogDeviation(earlier, later) > 0;
  return {
    from: lower.summarised.level.id,
    to: upper.summarised.level.id,
    intervalMyr: myr,
    intervalSigmaMyr: sigmaMyr,
    darwins: darwins(earlier, later, myr),
    ...(inGenerations ? { haldanes: haldanes(earlier, later, (myr * 1e6) / generationYears) } : {}),
  };
}

/** Geometric mean and spread of the natural logs of a level, floors included; undefined where they show no spread. */
export function findRateSample({ individuals }: SummarisedLevel): RateSample | undefined {
  const summary = findLevelSummary(
    individuals.map(({ valueMm, atLeast }) => ({ value: Math.log(valueMm), atLeast })),
  );
  if (!summary) return undefined;
  return { mean: Math.exp(summary.mean), logDeviation: Math.sqrt(summary.variance), n: summary.n };
}
