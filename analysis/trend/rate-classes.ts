import { median } from '../statistics/index.ts';
import type { LevelRate } from './rate-line.ts';

/** Rates over times of about one length. */
export interface RateClass {
  readonly fromMyr: number;
  readonly toMyr: number;
  readonly pairs: number;
  /** Darwins without direction: the middle one, the least and the greatest. */
  readonly middle: number;
  readonly least: number;
  readonly greatest: number;
}

/** Rates by the time that they span, in classes from 1 to 2, 2 to 5 and 5 to 10 of a power of ten, the shortest first. */
export function rateClasses(pairs: readonly LevelRate[]): RateClass[] {
  const classes = Map.groupBy(pairs, ({ intervalMyr }) => lowerEnd(intervalMyr));
  return [...classes]
    .sort(([a], [b]) => a - b)
    .map(([fromMyr, own]) => {
      const rates = own.map(({ darwins }) => darwins);
      return {
        fromMyr,
        toMyr: upperEnd(fromMyr),
        pairs: own.length,
        middle: median(rates),
        least: Math.min(...rates),
        greatest: Math.max(...rates),
      };
    });
}

function lowerEnd(intervalMyr: number): number {
  const ten = 10 ** Math.floor(Math.log10(intervalMyr));
  const digits = intervalMyr / ten;
  return exact((digits < 2 ? 1 : digits < 5 ? 2 : 5) * ten);
}

function upperEnd(fromMyr: number): number {
  return exact(fromMyr * (String(fromMyr.toExponential()).startsWith('2') ? 2.5 : 2));
}

/** A round number without the last bits of its making, so that equal ends are equal. */
function exact(value: number): number {
  return Number(value.toPrecision(3));
}
