import { applySimilarity, findSimilarity } from '../../../analysis/geometry/similarity.ts';
import { distanceBetween, type PlanePoint } from '../../../analysis/geometry/plane.ts';
import { spreadOf } from '../../../analysis/geometry/spread.ts';
import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import type { Digitising } from '../resolve/digitising.ts';
import type { SchemeIndex } from '../resolve/scheme-index.ts';
import { sideNames } from '../resolve/side-names.ts';
import type { ResolvedSpecimen } from '../resolve/specimens.ts';
import { readOwnDrawing, type OwnDrawing } from './read-own-drawing.ts';

/** A landmark of a drawing may stand this share of the size of all points beside where it was digitised. */
const offShare = 0.06;

/**
 * The authors' own drawings by specimen, their marks under the names by which shapes are laid on each other: a drawing of a
 * picture that was turned over has both ends of a pair swapped, as its points have. Those that cannot be used are reported and
 * left out.
 */
export function resolveOwnDrawings(
  { drawings }: LineageRecords,
  specimens: readonly ResolvedSpecimen[],
  scheme: Pick<SchemeIndex, 'landmarks'>,
  report: Report,
): Map<string, OwnDrawing> {
  const known = new Set(scheme.landmarks.keys());
  const found = new Map<string, OwnDrawing>();
  for (const specimen of specimens) {
    const { id, drawing } = specimen.record.value;
    const source = drawing && drawings.get(drawing.file.normalize('NFC'));
    const own = source && readOwnDrawing(source, known, `own-${id}-`, report);
    if (!own) continue;
    const flat = specimen.digitisings.find(({ dimensions }) => dimensions === 2);
    if (flat) checkStanding(specimen, own, flat, report);
    const nameOf = flat ? sideNames(flat, scheme) : (landmark: string) => landmark;
    const landmarks = new Map([...own.landmarks].map(([landmark, at]) => [nameOf(landmark), at]));
    found.set(id, { ...own, landmarks });
  }
  return found;
}

/** The drawing marks its landmarks where they were digitised, as far as a turn, a shift and a scale can tell. */
function checkStanding(
  { record }: ResolvedSpecimen,
  own: OwnDrawing,
  { repeats: [flat] }: Digitising,
  report: Report,
): void {
  if (!flat) return;
  const shared = [...own.landmarks.keys()].filter((id) => flat.has(id));
  if (shared.length < 3) return;
  const drawn = shared.map((id) => own.landmarks.get(id)!);
  const seen = shared.map((id): PlanePoint => [flat.get(id)!.at[0]!, flat.get(id)!.at[1]!]);
  const fit = findSimilarity(drawn, seen);
  if (!fit) return;
  const allowed = offShare * spreadOf(seen);
  shared.forEach((id, index) => {
    const away = distanceBetween(applySimilarity(fit, drawn[index]!), seen[index]!);
    if (away <= allowed) return;
    report.add(
      'drawing-off',
      record.at(['drawing', 'file']),
      `"${id}" stands elsewhere in the drawing of ${record.value.id} than where it was digitised`,
      'look at both: a landmark under another name, or a drawing of the other side, is the usual cause',
    );
  });
}
