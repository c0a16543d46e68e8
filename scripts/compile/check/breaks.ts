import type { Report } from '../findings/report.ts';
import { landmarksOf } from '../resolve/scheme-index.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { ResolvedSpecimen } from '../resolve/specimens.ts';
import type { Specimen } from '../schema/index.ts';

/** A lost end is measured to the break and says so; nothing is both lost and there. */
export function checkBreaks(lineage: ResolvedLineage, report: Report): void {
  for (const specimen of lineage.specimens) {
    const lost = new Set(specimen.record.value.lost.map(({ landmark }) => landmark));
    checkReadings(specimen, lost, lineage, report);
    if (lost.size === 0) continue;
    checkDigitised(specimen, lost, report);
    checkPoints(specimen, report);
    checkElements(specimen.record.value, specimen, lineage, report);
  }
}

function checkReadings(
  { record, readings }: ResolvedSpecimen,
  lost: ReadonlySet<string>,
  lineage: ResolvedLineage,
  report: Report,
): void {
  for (const [id, own] of readings) {
    const ends = landmarksOf(lineage.scheme.measurements.get(id)!);
    const lostEnd = ends.find((landmark) => lost.has(landmark));
    for (const { toBreak, span } of own) {
      if (toBreak === undefined && lostEnd !== undefined) {
        report.add(
          'break-unmarked',
          span,
          `"${id}" is given whole, and its end "${lostEnd}" is lost`,
          `add toBreak: ${lostEnd} if it was measured to the break; or take "${lostEnd}" off lost`,
        );
      } else if (toBreak !== undefined && !ends.includes(toBreak)) {
        report.add(
          'break-unneeded',
          span,
          `"${toBreak}" is no end of "${id}"`,
          ends.length > 0 ? `its landmarks are ${ends.join(', ')}` : 'remove toBreak',
        );
      } else if (toBreak !== undefined && !lost.has(toBreak)) {
        report.add(
          'break-unneeded',
          span,
          `"${id}" is measured to a break at "${toBreak}", which is not listed as lost`,
          `add { landmark: ${toBreak} } to lost of ${record.value.id}`,
        );
      }
    }
  }
}

function checkDigitised(
  { record, digitisings }: ResolvedSpecimen,
  lost: ReadonlySet<string>,
  report: Report,
): void {
  for (const digitising of digitisings) {
    for (const repeat of digitising.repeats) {
      for (const [landmark, { span }] of repeat) {
        if (!lost.has(landmark)) continue;
        report.add(
          'lost-and-present',
          span,
          `"${landmark}" is lost in ${record.value.id}, and the sheet has a point for it`,
          'empty the cells, or take it off lost; points along the break belong under lost',
        );
      }
    }
  }
}

/** Points of a break are in a picture or a scan that the specimen has; without any landmarks they are of no use yet. */
function checkPoints({ record, digitisings }: ResolvedSpecimen, report: Report): void {
  if (digitisings.length === 0) return;
  const known = new Set<number>(digitisings.map(({ dimensions }) => dimensions));
  record.value.lost.forEach(({ landmark, break: points = [] }, index) => {
    const place = points.findIndex((point) => !known.has(point.length));
    if (place < 0) return;
    const flat = points[place]!.length === 2;
    report.add(
      'sheet-shape',
      record.at(['lost', index, 'break', place]),
      `a point of the break of "${landmark}" has ${flat ? 'x and y' : 'x, y and z'}, and ${record.value.id} has landmarks in ${flat ? 'three dimensions' : 'two dimensions'} alone`,
      'give the point as many coordinates as the landmarks of its view have',
    );
  });
}

function checkElements(
  value: Specimen,
  { record }: ResolvedSpecimen,
  lineage: ResolvedLineage,
  report: Report,
): void {
  value.lost.forEach(({ landmark }, index) => {
    const bone = lineage.scheme.landmarks.get(landmark)?.bone;
    const whole = value.elements.find(({ element, preserved }) => element === bone && preserved === 1);
    if (!whole) return;
    report.add(
      'lost-and-present',
      record.at(['lost', index, 'landmark']),
      `"${landmark}" is lost, and its bone, the ${bone}, is listed as whole`,
      'give the share of the bone that is preserved',
    );
  });
}
