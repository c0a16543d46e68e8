import { findChartUnit } from '../../../analysis/ages/index.ts';
import type { Report } from '../findings/report.ts';
import type { AuthoredAge } from '../schema/index.ts';
import type { Located } from '../source/yaml-source.ts';
import { reportUnknownStage } from './unknown-stage.ts';
import { decimalsOf, withDecimals } from './written-number.ts';

/** How certain an age is: a bed's own date, beds around it, its stage alone, or living today. */
export type AgeBasis = 'dated' | 'bracketed' | 'stage' | 'living';

/** An age in Ma: its two ends (95% for a date), their digits, and the distribution that samples are drawn from. */
export interface ResolvedAge {
  from: number;
  to: number;
  decimals: number;
  basis: AgeBasis;
  /** Mean and standard deviation, Ma; a range is uniform, a date is normal. */
  mean: number;
  sd: number;
  kind: 'uniform' | 'normal';
}

/** Works out an authored age that stands at a path of a record; undefined after findings. */
export function resolveAge(
  age: AuthoredAge,
  record: Located<unknown>,
  path: PropertyKey[],
  report: Report,
): ResolvedAge | undefined {
  if ('date' in age) return dated(age, record, path, report);
  if ('stages' in age) return overStages(age.stages, record, [...path, 'stages'], report);
  if ('from' in age) return bracketed(age, record, path, report);
  return overStages([age.stage], record, [...path, 'stage'], report);
}

type Dated = Extract<AuthoredAge, { date: number }>;
type Bracketed = Extract<AuthoredAge, { from: number }>;

function dated(
  age: Dated,
  record: Located<unknown>,
  path: PropertyKey[],
  report: Report,
): ResolvedAge | undefined {
  if (age.plusMinus <= 0) {
    report.add(
      'wrong-value',
      record.at([...path, 'plusMinus']),
      `the error of a date is ${age.plusMinus}`,
      'give its plus or minus, more than zero',
    );
    return undefined;
  }
  if (!inThePast(age.date, record, [...path, 'date'], report)) return undefined;
  const sd = age.plusMinus / age.sigma;
  const decimals = Math.max(
    decimalsOf(record.writtenAt([...path, 'date'])),
    decimalsOf(record.writtenAt([...path, 'plusMinus'])),
  );
  const resolved: ResolvedAge = {
    from: age.date + 2 * sd,
    to: Math.max(0, age.date - 2 * sd),
    decimals,
    basis: 'dated',
    mean: age.date,
    sd,
    kind: 'normal',
  };
  checkStage(age.stage, resolved, record, path, report);
  return resolved;
}

function bracketed(
  age: Bracketed,
  record: Located<unknown>,
  path: PropertyKey[],
  report: Report,
): ResolvedAge | undefined {
  if (
    !inThePast(age.from, record, [...path, 'from'], report) ||
    !inThePast(age.to, record, [...path, 'to'], report)
  )
    return undefined;
  if (age.from < age.to) {
    report.add(
      'age-reversed',
      record.at([...path, 'from']),
      `from ${age.from} Ma is younger than to ${age.to} Ma`,
      'from is the older end, to the younger: swap them',
    );
    return undefined;
  }
  const decimals = Math.max(
    decimalsOf(record.writtenAt([...path, 'from'])),
    decimalsOf(record.writtenAt([...path, 'to'])),
  );
  const resolved = uniformAge(age.from, age.to, decimals, 'bracketed');
  checkStage(age.stage, resolved, record, path, report);
  return resolved;
}

function overStages(
  names: readonly string[],
  record: Located<unknown>,
  path: PropertyKey[],
  report: Report,
): ResolvedAge | undefined {
  const units = names.map((name, index) => {
    const unit = findChartUnit(name);
    if (!unit) reportUnknownStage(name, record, names.length > 1 ? [...path, index] : path, report);
    return unit;
  });
  if (units.some((unit) => unit === undefined)) return undefined;
  const from = Math.max(...units.map((unit) => unit!.fromMa));
  const to = Math.min(...units.map((unit) => unit!.toMa));
  return uniformAge(from, to, 0, 'stage');
}

/** An age that lies anywhere between two ends, Ma, known to so many decimals. */
export function uniformAge(from: number, to: number, decimals: number, basis: AgeBasis): ResolvedAge {
  return {
    from,
    to,
    decimals,
    basis,
    mean: (from + to) / 2,
    sd: (from - to) / Math.sqrt(12),
    kind: 'uniform',
  };
}

function inThePast(ma: number, record: Located<unknown>, path: PropertyKey[], report: Report): boolean {
  if (ma >= 0 && ma <= 4600) return true;
  const problem = ma < 0 ? `${ma} Ma lies in the future` : `${ma} Ma is older than the Earth`;
  report.add(
    'age-in-future',
    record.at(path),
    problem,
    'give the age in millions of years ago, without a sign',
  );
  return false;
}

function checkStage(
  name: string | undefined,
  age: ResolvedAge,
  record: Located<unknown>,
  path: PropertyKey[],
  report: Report,
): void {
  if (name === undefined) return;
  const unit = findChartUnit(name);
  if (!unit) return reportUnknownStage(name, record, [...path, 'stage'], report);
  if (age.from >= unit.toMa && age.to <= unit.fromMa) return;
  report.add(
    'age-outside-stage',
    record.at([...path, 'stage']),
    `${ageText(age)} Ma lies outside the ${unit.name}, ${unit.fromMa}–${unit.toMa} Ma`,
    'correct the age or the stage; the chart’s boundaries move between editions',
  );
}

/** The two ends with the digits that were written, or the one where they are equal. */
export function ageText(age: Pick<ResolvedAge, 'from' | 'to' | 'decimals'>): string {
  const from = withDecimals(age.from, age.decimals);
  const to = withDecimals(age.to, age.decimals);
  return from === to ? from : `${from}–${to}`;
}
