import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';

const degrees =
  /\d{1,3}(?:\.\d+)?\s*°\s*(?:\d{1,2}(?:\.\d+)?\s*[′'])?(?:\s*\d{1,2}(?:\.\d+)?\s*[″"])?\s*[NSEWO]/;
const decimalPair = /[-+]?\d{1,2}\.\d{3,}\s*[,;/ ]\s*[-+]?\d{1,3}\.\d{3,}/;
const grid = /\b\d{1,2}[C-HJ-NP-X]\s*\d{5,7}\s+\d{6,8}\b/;

/** Coordinates hidden in the name of a locality or in a note would be published: they belong in private.yaml. */
export function checkPlaces(records: LineageRecords, report: Report): void {
  for (const { value, at } of records.specimens.records) {
    const texts: [PropertyKey[], string | undefined][] = [
      [['locality', 'name'], value.locality?.name],
      ...Object.entries(value.note ?? {}).map(([language, text]): [PropertyKey[], string] => [
        ['note', language],
        text,
      ]),
    ];
    for (const [path, text] of texts) {
      if (text === undefined || !(degrees.test(text) || decimalPair.test(text) || grid.test(text))) continue;
      report.add(
        'exact-place',
        at(path),
        'an exact place would be published from here',
        'move the coordinates to private.yaml, and name the district or county here',
      );
    }
  }
}
