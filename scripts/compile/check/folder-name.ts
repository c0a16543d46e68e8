import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';

/** Addresses that the site has for pages of its own. */
const taken = new Set(['bench', 'methods', 'og', 'data', 'skulls', 'templates', 'index', '404']);

/** A lineage's folder is its address: it must be an id, and none that the site keeps for itself. */
export function checkFolderName(records: LineageRecords, report: Report): void {
  const { id } = records.folder;
  const where = records.lineage?.at(['title']);
  if (!where) return;
  if (taken.has(id))
    report.add(
      'unsafe-id',
      where,
      `the site has a page of its own at "${id}"`,
      'give the folder of the lineage another name',
    );
  else if (!/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(id))
    report.add(
      'unsafe-id',
      where,
      `the folder "${id}" is no address: small letters, digits and single hyphens`,
      'rename the folder of the lineage, as in reed-trunks',
    );
}
