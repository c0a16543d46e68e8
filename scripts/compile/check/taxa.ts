import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';

/** A scientific name is of one taxon, and an age that rests on no find here names its source. */
export function checkTaxa({ taxa }: LineageRecords, report: Report): void {
  const named = new Map<string, string>();
  for (const { value, at } of taxa.records) {
    const first = named.get(value.scientificName);
    if (first === undefined) named.set(value.scientificName, value.id);
    else
      report.add(
        'duplicate-id',
        at(['scientificName']),
        `"${value.scientificName}" is also the name of "${first}"`,
        'correct one of the two names, or keep one record',
      );
    if (value.age === undefined || (value.sources?.length ?? 0) > 0) continue;
    report.add(
      'source-missing',
      at(['age']),
      `the age of "${value.id}" has no source`,
      'name under sources who says so, or remove the age: it is worked out from the finds',
    );
  }
}
