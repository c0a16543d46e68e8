import type { Report } from '../findings/report.ts';
import type { LandmarkSource, Specimen } from '../schema/index.ts';
import { itemPath, type Located } from '../source/yaml-source.ts';
import type { LandmarkSheet, Repeat } from './landmark-sheet.ts';
import type { SchemeIndex } from './scheme-index.ts';

/** The landmarks of one specimen in one view: its repeats in units of the sheet, and what a unit is in mm. */
export interface Digitising {
  source: LandmarkSource;
  /** Where the source stands in the specimen's record. */
  path: PropertyKey[];
  dimensions: 2 | 3;
  mmPerUnit: number;
  repeats: Repeat[];
}

/** Finds the landmarks of a specimen in their sheets; a scale that is missing or zero, and an absent row, are reported. */
export function digitisingsOf(
  specimen: Located<Specimen>,
  sheets: ReadonlyMap<string, LandmarkSheet>,
  scheme: SchemeIndex,
  report: Report,
): Digitising[] {
  return specimen.value.landmarks.flatMap((source, index) => {
    const path = itemPath(specimen, 'landmarks', index);
    const sheet = sheets.get(source.sheet.normalize('NFC'));
    if (!sheet) return [];
    const repeats = sheet.get(specimen.value.id)?.repeats;
    if (!repeats) {
      report.add(
        'sheet-shape',
        specimen.at([...path, 'sheet']),
        `"${source.sheet}" has no row for ${specimen.value.id}`,
        'add its landmarks to the sheet, or name the sheet that has them',
      );
      return [];
    }
    const mmPerUnit = scaleOf(specimen, source, path, report);
    if (mmPerUnit === undefined) return [];
    return [{ source, path, dimensions: scheme.views.get(source.view)?.dimensions ?? 2, mmPerUnit, repeats }];
  });
}

function scaleOf(
  specimen: Located<Specimen>,
  source: LandmarkSource,
  path: PropertyKey[],
  report: Report,
): number | undefined {
  const refuse = (key: string, problem: string, advice: string) =>
    report.add('scale', specimen.at([...path, key]), problem, advice);
  if (source.mmPerUnit !== undefined && source.scale !== undefined) {
    refuse('mmPerUnit', 'both mmPerUnit and scale are given', 'keep one of the two');
  } else if (source.mmPerUnit !== undefined) {
    if (source.mmPerUnit > 0) return source.mmPerUnit;
    refuse(
      'mmPerUnit',
      `mmPerUnit is ${source.mmPerUnit}`,
      'a scale is more than zero: millimetres in one unit of the sheet',
    );
  } else if (source.scale !== undefined) {
    const { from, to, mm } = source.scale;
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (length > 0 && mm > 0) return mm / length;
    refuse(
      'scale',
      `the scale bar is ${mm} mm over ${length} units`,
      'give the two ends of the bar in the picture and its length, both more than zero',
    );
  } else {
    refuse(
      'sheet',
      'nothing says how long a unit of the sheet is',
      'give mmPerUnit: 1 when the sheet is in mm, or the two ends and the length of the scale bar',
    );
  }
  return undefined;
}
