import { interpolateAge, type DatedBed, type LevelAge } from '../../../analysis/ages/index.ts';
import type { Report } from '../findings/report.ts';
import type { Span } from '../source/source-text.ts';
import type { ResolvedAge } from '../resolve/ages.ts';
import type { LevelRow } from './read-levels.ts';

/** A dated bed of a section with the level that holds it. */
export interface SectionBed extends DatedBed {
  readonly level: LevelRow;
}

/** Dated beds from the base up, and the age of every level that lies among them. */
export interface LevelAges {
  readonly beds: readonly SectionBed[];
  readonly ages: ReadonlyMap<string, LevelAge>;
}

/**
 * Ages of levels by straight lines between dated beds; a bed known to its stage alone dates nothing. With fewer than two
 * dated beds, or beds whose dates run against their order, no level has an age, and a finding says why. `used` are the
 * levels that hold individuals: of these it is told when they lie outside the dated beds.
 */
export function dateLevels(
  levels: readonly LevelRow[],
  horizonAges: ReadonlyMap<string, ResolvedAge>,
  used: ReadonlySet<string>,
  place: { readonly where: Span; readonly report: Report },
): LevelAges {
  const beds = datedBeds(levels, horizonAges);
  if (beds.length < 2) {
    tellUndated(beds, place);
    return { beds, ages: new Map() };
  }
  if (!isInOrder(beds, place.report)) return { beds, ages: new Map() };
  const ages = new Map<string, LevelAge>();
  for (const level of levels) {
    const age = interpolateAge(beds, level.heightM);
    if (age) ages.set(level.id, age);
    else if (used.has(level.id)) tellOutside(level, beds, place.report);
  }
  return { beds, ages };
}

function datedBeds(levels: readonly LevelRow[], horizonAges: ReadonlyMap<string, ResolvedAge>): SectionBed[] {
  return levels.flatMap((level) => {
    const age = level.horizon === undefined ? undefined : horizonAges.get(level.horizon);
    if (!age || (age.basis !== 'dated' && age.basis !== 'bracketed')) return [];
    return { level, heightM: level.heightM, ageMa: age.mean, sigmaMa: age.sd };
  });
}

function tellUndated(beds: readonly SectionBed[], { where, report }: { where: Span; report: Report }): void {
  const only = beds[0];
  report.add(
    'levels-undated',
    only?.level.span ?? where,
    only ? `"${only.level.id}" is the one dated bed of the section` : 'no bed of the section is dated',
    'name the horizons of two dated beds or more in the column horizon; without them the levels have no ages, and the models tell nothing',
  );
}

/** Whether every bed is younger than the one below it; told where it is not. */
function isInOrder(beds: readonly SectionBed[], report: Report): boolean {
  let right = true;
  beds.forEach((upper, index) => {
    const lower = beds[index - 1];
    if (!lower) return;
    const { level } = upper;
    if (upper.ageMa > lower.ageMa)
      report.add(
        'superposition',
        level.span,
        `"${level.id}" at ${upper.heightM} m is dated ${upper.ageMa} Ma, older than ${lower.ageMa} Ma of "${lower.level.id}" below it`,
        'correct a date or a height, or leave out the horizon of the one that is not trusted',
      );
    else if (upper.ageMa === lower.ageMa || upper.heightM === lower.heightM)
      report.add(
        'levels-same-age',
        level.span,
        `"${level.id}" and "${lower.level.id}" below it have one ${upper.ageMa === lower.ageMa ? `date, ${upper.ageMa} Ma` : `height, ${upper.heightM} m`}`,
        'leave out the horizon of one of the two: no time can be told between them, and the models tell nothing',
      );
    else return;
    right = false;
  });
  return right;
}

function tellOutside({ id, heightM, span }: LevelRow, beds: readonly SectionBed[], report: Report): void {
  report.add(
    'levels-undated',
    span,
    `"${id}" at ${heightM} m lies outside the dated beds, ${beds[0]!.heightM} to ${beds.at(-1)!.heightM} m, and has no age`,
    'it is shown and takes no part in the models; a dated bed beyond it would give it an age',
  );
}
