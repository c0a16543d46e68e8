import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import type { Span } from '../source/source-text.ts';
import { itemPath } from '../source/yaml-source.ts';

/** Files that records name as pictures are pictures, cannot run anything, and do not tell a place. */
export function checkPictureFiles(records: LineageRecords, report: Report): void {
  for (const specimen of records.specimens.records) {
    const { pictures, landmarks } = specimen.value;
    pictures.forEach(({ file }, index) =>
      checkFile(file, specimen.at(['pictures', index, 'file']), records, report),
    );
    landmarks.forEach(({ picture }, index) => {
      // A picture that is also shown is told of once, where it is shown.
      if (picture === undefined || pictures.some(({ file }) => file === picture)) return;
      checkFile(
        picture,
        specimen.at([...itemPath(specimen, 'landmarks', index), 'picture']),
        records,
        report,
      );
    });
  }
}

function checkFile(file: string, span: Span, { folder, pictures }: LineageRecords, report: Report): void {
  const name = file.normalize('NFC');
  if (!folder.files.includes(name)) return;
  const picture = pictures.get(name);
  if (!picture) {
    report.add(
      'not-a-picture',
      span,
      `"${file}" is no picture that a browser shows, or breaks off`,
      'save it again as PNG, JPEG, WebP, AVIF or SVG',
    );
    return;
  }
  if (picture.active !== undefined)
    report.add(
      'active-drawing',
      span,
      `the drawing "${file}" holds something that could run or reach out: ${picture.active}`,
      'save it again with lines, areas and text alone',
    );
  if (picture.position)
    report.add(
      'picture-position',
      span,
      `"${file}" says where it was taken; pages show it without that`,
      'take the position out of the file too before the folder is shared: exact places invite looting',
    );
}
