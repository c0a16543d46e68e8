import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import type { SourceText } from '../source/source-text.ts';
import type { Located } from '../source/yaml-source.ts';

/** Coordinates with fewer decimals than this are to about a kilometre: they lead nobody to the bed. */
const exactDecimals = 3;
/** A latitude and a longitude so many characters apart are one place. */
const near = 120;

type PrivateRecord = LineageRecords['private']['records'][number];

/** What private.yaml keeps, the names of landowners and exact coordinates, must stand in no file that is published. */
export function checkPrivateValues(
  records: LineageRecords,
  published: readonly SourceText[],
  report: Report,
): void {
  for (const record of records.private.records) {
    for (const source of published) {
      checkOwner(record, source, report);
      checkCoordinates(record, source, report);
    }
  }
}

function checkOwner({ value: { landowner } }: PrivateRecord, source: SourceText, report: Report): void {
  if (landowner === undefined) return;
  const start = source.text.toLowerCase().indexOf(landowner.toLowerCase());
  if (start < 0) return;
  report.add(
    'exact-place',
    { source, start, end: start + landowner.length },
    'the name of a landowner, which private.yaml keeps, would be published from here',
    'remove the name',
  );
}

function checkCoordinates(record: PrivateRecord, source: SourceText, report: Report): void {
  const latitude = patternOf(record, 'decimalLatitude');
  const longitude = patternOf(record, 'decimalLongitude');
  if (!latitude || !longitude) return;
  for (const match of source.text.matchAll(latitude)) {
    const end = match.index + match[0].length;
    const around = source.text.slice(Math.max(0, match.index - near), end + near);
    if (around.search(longitude) < 0) continue;
    report.add(
      'exact-place',
      { source, start: match.index, end },
      'coordinates that private.yaml keeps would be published from here',
      'remove them, and name the district or county here',
    );
    return;
  }
}

/** The number to the decimals that make it exact, with whatever decimals follow; undefined for one that is not exact. */
function patternOf(record: Located<unknown>, key: string): RegExp | undefined {
  const written = record.writtenAt([key])?.replace(/^[-+]/, '');
  const [whole, decimals = ''] = written?.split('.') ?? [];
  if (whole === undefined || decimals.length < exactDecimals) return undefined;
  return new RegExp(`(?<![\\d.])${whole}\\.${decimals.slice(0, exactDecimals)}\\d*`, 'g');
}
