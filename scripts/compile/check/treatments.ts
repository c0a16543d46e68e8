import type { Report } from '../findings/report.ts';
import { landmarksOf } from '../resolve/scheme-index.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import { itemPath } from '../source/yaml-source.ts';
import type { ResolvedSpecimen } from '../resolve/specimens.ts';

/** Filler and distortion say what was done about them, and what is used after all carries its plus or minus. */
export function checkTreatments(lineage: ResolvedLineage, report: Report): void {
  const used = landmarksInUse(lineage);
  for (const specimen of lineage.specimens) {
    checkFiller(specimen, used, report);
    checkDistortion(specimen, report);
  }
}

function landmarksInUse({ scheme }: ResolvedLineage): Set<string> {
  const ends = [...scheme.measurements.values()].flatMap(landmarksOf);
  const axes = [...scheme.axes.values()].flatMap((axis) => [axis.from, axis.to]);
  return new Set([...ends, ...axes]);
}

function checkFiller({ record }: ResolvedSpecimen, used: ReadonlySet<string>, report: Report): void {
  record.value.filler.forEach((filler, index) => {
    if (typeof filler === 'string') {
      if (!used.has(filler)) return;
      report.add(
        'untreated',
        record.at(['filler', index]),
        `"${filler}" lies on filler, and nothing says what was done about it`,
        `write { landmark: ${filler}, treatment: excluded }, or taken-as-found with its error`,
      );
    } else if (filler.treatment === 'taken-as-found' && filler.error === undefined) {
      report.add(
        'approximate-without-error',
        record.at(['filler', index]),
        `"${filler.landmark}" is taken from filler without a plus or minus`,
        'add error: in mm (95%)',
      );
    }
  });
}

function checkDistortion({ record }: ResolvedSpecimen, report: Report): void {
  record.value.distortion.forEach(({ kind, treatment, error, method }, index) => {
    const path = itemPath(record, 'distortion', index);
    if (treatment === undefined)
      report.add(
        'untreated',
        record.at(path),
        `the bone is ${kind}, and nothing says what was done about it`,
        'add treatment: excluded, corrected or taken-as-found',
      );
    else if (treatment !== 'excluded' && error === undefined)
      report.add(
        'approximate-without-error',
        record.at([...path, 'treatment']),
        `the ${kind} part is ${treatment} without a plus or minus`,
        'add error: in mm (95%)',
      );
    else if (treatment === 'corrected' && method === undefined)
      report.add(
        'untreated',
        record.at([...path, 'treatment']),
        'nothing says how it was corrected',
        'add method:',
      );
  });
}
