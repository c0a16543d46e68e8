import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import { expectFile } from './expect-id.ts';
import { checkRights, type Showing } from './permissions.ts';
import { checkVenues, venuesOf } from './venues.ts';

/** An author's drawing is in the folder of drawings, and says whose it is and that pages may show it. */
export function checkOwnDrawings(
  { lineage, specimens, folder }: LineageRecords,
  showing: Showing,
  report: Report,
): void {
  for (const specimen of specimens.records) {
    const { value, at } = specimen;
    const { drawing } = value;
    if (!drawing) continue;
    expectFile(drawing.file, folder.files, at(['drawing', 'file']), report);
    if (!/^drawings\/.*\.svg$/i.test(drawing.file))
      report.add(
        'drawing-shape',
        at(['drawing', 'file']),
        `"${drawing.file}" is no SVG in the folder drawings`,
        'put the drawing into drawings/ and save it as SVG; photographs stand under pictures',
      );
    const { image, licence, venues } = { ...value.rights, ...drawing.rights };
    if (image === undefined || licence === undefined)
      report.add(
        'picture-rights',
        at(['drawing']),
        `nothing says under rights whose "${drawing.file}" is`,
        'add rights: { image: who holds them, licence: … }',
      );
    if (drawing.rights) checkRights(drawing.rights, ['drawing', 'rights'], specimen, showing, report);
    checkVenues(drawing.file, venues, venuesOf(lineage), at(['drawing', 'file']), showing, report);
  }
}
