import {
  brokenLength,
  brokenRatio,
  errorOfMean,
  errorOfPlusMinus,
  findRepeatComponents,
  geometricMean,
  geometricMeanError,
  type BrokenReading,
} from '../../../analysis/traits/index.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { Reading } from '../resolve/measured.ts';
import type { BrokenQuestion, BrokenTrait } from './broken-specimen.ts';
import { chosenReading } from './specimen-values.ts';
import { timesOf } from './trait-kind.ts';

/** A length with its standard error, and whether it was measured to the break. */
interface CalliperLength {
  mm: number;
  error: number;
  toBreak: boolean;
}

/** Readings from callipers held to the break; undefined where a measurement of the trait was not taken, or none to the break. */
export function brokenByCallipers({
  trait,
  kind,
  specimen,
  lost,
  lineage,
}: BrokenQuestion): BrokenTrait[] | undefined {
  const lengths = kind.measurements.map((id) => {
    const readings = specimen.readings.get(id);
    const toBreak = readings?.find((reading) => reading.toBreak === lost.landmark);
    const reading = toBreak ?? chosenReading(readings);
    return reading && { ...lengthOf(id, reading, lineage), toBreak: toBreak !== undefined };
  });
  if (lengths.some((length) => length === undefined)) return undefined;
  const known = lengths as CalliperLength[]; // none is undefined
  if (!known.some(({ toBreak }) => toBreak) || known.some(({ mm }) => mm <= 0)) return undefined;
  const preservedMm = known.map(({ mm }) => mm);
  if (kind.kind === 'size') return [{ reading: brokenSize(known), preservedMm }];
  const [first, second] = known;
  if (!second) return [{ reading: brokenLength(first!), preservedMm }];
  const lostAddsTo = first!.toBreak && second.toBreak ? 'both' : first!.toBreak ? 'part' : 'whole';
  const reading = brokenRatio({ part: first!, whole: second, lostAddsTo, times: timesOf(trait) });
  return [{ reading, preservedMm }];
}

/** Error from the repeats of this measurement over the whole lineage; an author's plus or minus on top. */
function lengthOf(
  id: string,
  { values, approximate = 0 }: Reading,
  { specimens }: ResolvedLineage,
): { mm: number; error: number } {
  const reading =
    findRepeatComponents(
      specimens.flatMap(({ readings }) => (readings.get(id) ?? []).map((each) => each.values)),
    )?.within ?? 0;
  const mm = values.reduce((sum, value) => sum + value, 0) / values.length;
  return {
    mm,
    error: Math.hypot(errorOfMean({ reading }, { readings: values.length }), errorOfPlusMinus(approximate)),
  };
}

function brokenSize(lengths: readonly CalliperLength[]): BrokenReading {
  const at = (lostMm: number) => lengths.map(({ mm, toBreak }) => mm + (toBreak ? lostMm : 0));
  const errors = lengths.map(({ error }) => error);
  return {
    valueAt: (lostMm) => geometricMean(at(lostMm)),
    errorAt: (lostMm) => geometricMeanError(at(lostMm), errors),
  };
}
