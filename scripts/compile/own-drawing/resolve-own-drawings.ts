import { applySimilarity, findSimilarity } from '../../../analysis/geometry/similarity.ts';
import { distanceBetween, type PlanePoint } from '../../../analysis/geometry/plane.ts';
import { spreadOf } from '../../../analysis/geometry/spread.ts';
import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import type { ResolvedSpecimen } from '../resolve/specimens.ts';
import { readOwnDrawing, type OwnDrawing } from './read-own-drawing.ts';

/** A landmark of a drawing may stand this share of the size of all points beside where it was digitised. */
const offShare = 0.06;

/** The authors' own drawings by specimen; those that cannot be used are reported and left out. */
export function resolveOwnDrawings(
  { drawings }: LineageRecords,
  specimens: readonly ResolvedSpecimen[],
  landmarks: ReadonlySet<string>,
  report: Report,
): Map<string, OwnDrawing> {
  const found = new Map<string, OwnDrawing>();
  for (const specimen of specimens) {
    const { id, drawing } = specimen.record.value;
    const source = drawing && drawings.get(drawing.file.normalize('NFC'));
    const own = source && readOwnDrawing(source, landmarks, `own-${id}-`, report);
    if (!own) continue;
    checkStanding(specimen, own, report);
    found.set(id, own);
  }
  return found;
}

/** The drawing marks its landmarks where they were digitised, as far as a turn, a shift and a scale can tell. */
function checkStanding({ record, digitisings }: ResolvedSpecimen, own: OwnDrawing, report: Report): void {
  const flat = digitisings.find(({ dimensions }) => dimensions === 2)?.repeats[0];
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
