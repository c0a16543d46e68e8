import type { BrokenReading } from '../../../analysis/traits/index.ts';
import { castOf } from '../check/record-ids.ts';
import { landmarksOf } from '../resolve/scheme-index.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { ResolvedSpecimen } from '../resolve/specimens.ts';
import type { LostLandmark, Trait } from '../schema/index.ts';
import { brokenByCallipers } from './broken-callipers.ts';
import { brokenByLandmarks } from './broken-landmarks.ts';
import type { TraitKind } from './trait-kind.ts';

/** What a broken specimen would read for a trait from one point of its break, in one direction of the axis. */
export interface BrokenTrait {
  reading: BrokenReading;
  /** The measurements as they are preserved, up to that point, in mm. */
  preservedMm: number[];
}

/** What the readers of a broken specimen are given. */
export interface BrokenQuestion {
  trait: Trait;
  kind: TraitKind;
  specimen: ResolvedSpecimen;
  lost: LostLandmark;
  lineage: ResolvedLineage;
  coordinateError: number;
}

/**
 * Readings of a trait on a specimen that lost exactly one of the landmarks that the trait needs: from the points of its
 * break, else from callipers held to the break. Undefined where it lost none or several, and for angles and counts.
 */
export function readBroken(
  trait: Trait,
  kind: TraitKind,
  specimen: ResolvedSpecimen,
  lineage: ResolvedLineage,
  coordinateError: number,
): { readings: BrokenTrait[]; lost: LostLandmark } | undefined {
  const lost = lostOf(kind, specimen, lineage);
  if (lost.length !== 1 || hasNoLength(kind) || castOf(specimen.record.value) !== undefined) return undefined;
  const question = { trait, kind, specimen, lost: lost[0]!, lineage, coordinateError };
  const readings = brokenByLandmarks(question) ?? brokenByCallipers(question);
  return readings && { readings, lost: lost[0]! };
}

/** Why breaks on the landmarks of a trait can give no limit at all, whatever was measured; undefined where they may. */
export function findNoLimit(
  kind: TraitKind,
  specimen: ResolvedSpecimen,
  lineage: ResolvedLineage,
): 'no-length' | 'several-lost' | undefined {
  const lost = lostOf(kind, specimen, lineage);
  if (lost.length === 0 || castOf(specimen.record.value) !== undefined) return undefined;
  if (hasNoLength(kind)) return 'no-length';
  return lost.length > 1 ? 'several-lost' : undefined;
}

/** The lost landmarks that a trait needs. */
function lostOf(kind: TraitKind, specimen: ResolvedSpecimen, lineage: ResolvedLineage): LostLandmark[] {
  const needed = new Set(
    kind.measurements.flatMap((id) => landmarksOf(lineage.scheme.measurements.get(id)!)),
  );
  return specimen.record.value.lost.filter(({ landmark }) => needed.has(landmark));
}

/** An angle or a count does not grow with the length that is lost. */
function hasNoLength({ kind }: TraitKind): boolean {
  return kind === 'angle' || kind === 'count';
}
