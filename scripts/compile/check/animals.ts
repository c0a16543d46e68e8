import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { Specimen } from '../schema/index.ts';
import type { Located } from '../source/yaml-source.ts';
import { checkCasts } from './casts.ts';

/** One animal counts once, and a ratio comes from one animal. */
export function checkAnimals(lineage: ResolvedLineage, report: Report): void {
  const specimens = lineage.specimens.map(({ record }) => record);
  checkNumbers(specimens, report);
  checkCasts(specimens, report);
  checkRatios(specimens, lineage.records, report);
}

function checkNumbers(specimens: readonly Located<Specimen>[], report: Report): void {
  const seen = new Map<string, string>();
  for (const specimen of specimens) {
    const { id, institutionCode, catalogNumber, preparations } = specimen.value;
    if (catalogNumber === undefined || preparations.startsWith('cast')) continue;
    const number = `${institutionCode ?? ''} ${catalogNumber}`;
    const first = seen.get(number);
    if (first === undefined) seen.set(number, id);
    else
      report.add(
        'counted-twice',
        specimen.at(['catalogNumber']),
        `"${first}" has the same catalogue number: one animal would count twice`,
        'keep one record for one animal, or correct the number',
      );
  }
}

function checkRatios(specimens: readonly Located<Specimen>[], records: LineageRecords, report: Report): void {
  const ratio = records.traits.records.find(({ value }) => value.ratio !== undefined)?.value;
  if (!ratio) return;
  for (const specimen of specimens) {
    const { association, admitted } = specimen.value;
    if (!admitted || (association !== 'composite' && association !== 'lot')) continue;
    report.add(
      'mixed-individuals',
      specimen.at(['association']),
      `"${ratio.id}" is a ratio within one animal, and this is a ${association}`,
      'remove admitted: lengths of several animals make no ratio',
    );
  }
}
