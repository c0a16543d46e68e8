import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import { checkStories } from './check-stories.ts';
import { gatherKnown } from './known.ts';
import { checkRecordIds } from './record-ids.ts';
import { checkScheme } from './scheme-ids.ts';
import { checkTraits } from './traits.ts';

/** Checks records against each other: everything that can be said before anything is computed. */
export function checkRecords(records: LineageRecords, report: Report): void {
  const known = gatherKnown(records);
  checkScheme(records, known, report);
  checkRecordIds(records, known, report);
  checkTraits(records, report);
  checkStories(records, known, report);
}
