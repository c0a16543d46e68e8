import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import { checkBibliography } from './bibliography.ts';
import { checkCharacters } from './characters.ts';
import { checkStories } from './check-stories.ts';
import { checkEditions } from './editions.ts';
import { checkFolderName } from './folder-name.ts';
import { gatherKnown } from './known.ts';
import { checkOwnDrawings } from './own-drawings.ts';
import { checkPairs } from './pairs.ts';
import { checkPermissions, type Showing } from './permissions.ts';
import { checkPictureFiles } from './picture-files.ts';
import { checkPlaces } from './places.ts';
import { checkRecordIds } from './record-ids.ts';
import { checkScheme } from './scheme-ids.ts';
import { checkSection } from '../section/check-section.ts';
import { checkTaxa } from './taxa.ts';
import { checkTexts } from './texts.ts';
import { checkTraits } from './traits.ts';

/** Checks records against each other: everything that can be said before tables are joined and anything is computed. */
export function checkRecords(records: LineageRecords, showing: Showing, report: Report): void {
  const known = gatherKnown(records);
  checkFolderName(records, report);
  checkEditions(records, report);
  checkScheme(records, known, report);
  checkPairs(records, report);
  checkRecordIds(records, known, report);
  checkTaxa(records, report);
  checkCharacters(records, known, report);
  checkTraits(records, report);
  checkSection(records, known, report);
  checkTexts(records, report);
  checkBibliography(records, report);
  checkPermissions(records, showing, report);
  checkPictureFiles(records, report);
  checkOwnDrawings(records, showing, report);
  checkPlaces(records, report);
  checkStories(records, known, report);
}
