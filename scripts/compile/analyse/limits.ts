import type { TraitAnswer } from '../../../analysis/estimate/index.ts';
import { improbableLimit } from '../../../analysis/statements/index.ts';
import { limitOfBroken, workingRows, type BrokenLimit } from '../../../analysis/traits/index.ts';
import type { Report } from '../findings/report.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { ResolvedSpecimen } from '../resolve/specimens.ts';
import { findNoLimit, readBroken, type BrokenTrait } from './broken-specimen.ts';
import { coordinateErrorMm } from './coordinate-error.ts';
import { findReasonOut } from './eligibility.ts';
import type { ObservedTrait } from './observe-trait.ts';

/** The limit that one broken specimen sets to its own value of a trait. */
export interface SpecimenLimit {
  specimen: ResolvedSpecimen;
  limit: Extract<BrokenLimit, { found: true }>;
  preservedMm: number[];
  /** What it would read with so much of the lost part restored. */
  rows: { lostMm: number; value: number }[];
}

/** Limits from the broken specimens of each taxon that count for a trait; one that gives none is a finding. */
export function findLimits(
  observed: ObservedTrait,
  lineage: ResolvedLineage,
  report: Report,
): Map<string, SpecimenLimit[]> {
  const coordinateError = coordinateErrorMm(lineage.specimens);
  const limits = new Map<string, SpecimenLimit[]>();
  for (const specimen of lineage.specimens) {
    const { value } = specimen.record;
    if (value.lost.length === 0 || findReasonOut(value, observed.trait)) continue;
    const none = findNoLimit(observed.kind, specimen, lineage);
    if (none) refuse(none, specimen, observed, report);
    const broken = readBroken(observed.trait, observed.kind, specimen, lineage, coordinateError);
    const limit = broken && limitFrom(broken.readings, broken.lost.atMost, specimen, observed, report);
    if (!limit) continue;
    limits.set(value.taxon, [...(limits.get(value.taxon) ?? []), limit]);
  }
  return limits;
}

function limitFrom(
  broken: readonly BrokenTrait[],
  atMostMm: number | undefined,
  specimen: ResolvedSpecimen,
  observed: ObservedTrait,
  report: Report,
): SpecimenLimit | undefined {
  const limit = limitOfBroken(
    broken.map(({ reading }) => reading),
    { atMostMm },
  );
  if (!limit.found) {
    refuse(limit.reason, specimen, observed, report);
    return undefined;
  }
  const { reading, preservedMm } = weakestOf(broken, limit.atLeast !== undefined);
  const shown = atMostMm ?? roundedTens(Math.max(...preservedMm) / 2);
  return { specimen, limit, preservedMm, rows: workingRows(reading, shown) };
}

function refuse(
  reason: keyof typeof refusals,
  specimen: ResolvedSpecimen,
  observed: ObservedTrait,
  report: Report,
): void {
  report.add(
    'limit-refused',
    specimen.record.at(['lost']),
    `the break gives no limit for "${observed.trait.id}": ${refusals[reason]}`,
    'its value stays open; a landmark that survives may serve better',
  );
}

/** The reading that the limit rests on: the lowest with nothing restored for a floor, the highest for a ceiling. */
function weakestOf(broken: readonly BrokenTrait[], floor: boolean): BrokenTrait {
  const sign = floor ? 1 : -1;
  return broken.reduce((weakest, each) =>
    sign * each.reading.valueAt(0) < sign * weakest.reading.valueAt(0) ? each : weakest,
  );
}

const refusals = {
  'not-monotone': 'what it would read rises and falls with the length that is lost',
  'senses-differ': 'from one point of the break it would be a floor, from another a ceiling',
  'no-reading': 'nothing was measured to the break',
  'no-length': 'an angle or a count does not simply grow with the length that is lost',
  'several-lost': 'more than one of its landmarks is lost',
} as const;

function roundedTens(mm: number): number {
  return Math.max(10, Math.round(mm / 10) * 10);
}

/** Of several limits of one taxon the one that says most: the highest floor, or else the lowest ceiling. */
export function strongest(limits: readonly SpecimenLimit[]): SpecimenLimit | undefined {
  const floors = limits.filter(({ limit }) => limit.atLeast !== undefined);
  if (floors.length > 0)
    return floors.reduce((best, each) => (each.limit.atLeast! > best.limit.atLeast! ? each : best));
  const ceilings = limits.filter(({ limit }) => limit.atMost !== undefined);
  return ceilings.length === 0
    ? undefined
    : ceilings.reduce((best, each) => (each.limit.atMost! < best.limit.atMost! ? each : best));
}

/** Tells of broken specimens whose limit relatives find very improbable; pages then show both. */
export function warnOfImprobable(
  limits: ReadonlyMap<string, readonly SpecimenLimit[]>,
  answer: TraitAnswer | undefined,
  report: Report,
): void {
  if (!answer?.estimated) return;
  const specimens = new Map(
    [...limits.values()].flat().map(({ specimen }) => [specimen.record.value.id, specimen.record]),
  );
  for (const { specimen, probability } of answer.limits.probabilities) {
    const record = specimens.get(specimen);
    if (probability >= improbableLimit || !record) continue;
    report.add(
      'limit-improbable',
      record.at(['lost']),
      `relatives find the limit of "${specimen}" very improbable (${probability.toExponential(0)})`,
      'look again at the break, the identification and the axis; if all are right, it stands: pages show both',
    );
  }
}
