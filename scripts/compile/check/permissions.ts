import { didYouMean } from '../findings/suggest.ts';
import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import type { Specimen } from '../schema/index.ts';
import type { Span } from '../source/source-text.ts';
import type { Located } from '../source/yaml-source.ts';
import { isLicence, licenceIds } from './licences.ts';
import { checkSensitive, checkVenues, venuesOf, type Venue } from './venues.ts';

/** Where and when a lineage is shown. */
export interface Showing {
  /** A preview is stamped and seen by nobody outside; what is not yet permitted is a warning there. */
  preview: boolean;
  /** The day of the build, as 2026-11-25. */
  today: string;
}

type Rights = NonNullable<Specimen['rights']>;

/** Pictures have a text, an owner and a licence, and nothing is shown where, before or after it may be. */
export function checkPermissions(records: LineageRecords, showing: Showing, report: Report): void {
  const { lineage } = records;
  if (lineage) {
    checkLicence(lineage.value.licence, lineage.at(['licence']), report);
    checkSensitive(lineage, showing, report);
    checkEmbargo(lineage.value.embargo, 'this lineage', () => lineage.at(['embargo']), showing, report);
  }
  for (const { value, at } of records.taxa.records) {
    if (value.nomenclature === 'published' || showing.preview) continue;
    report.add(
      'informal-name',
      at(['nomenclature']),
      `"${value.scientificName}" is ${value.nomenclature === 'informal' ? 'an informal name' : 'in press, not published'}`,
      'publish the name first: a name on a public page can be taken for its publication; a preview shows it',
    );
  }
  for (const specimen of records.specimens.records)
    checkSpecimen(specimen, venuesOf(lineage), showing, report);
}

function checkSpecimen(
  specimen: Located<Specimen>,
  wanted: readonly Venue[],
  showing: Showing,
  report: Report,
): void {
  const { rights, pictures } = specimen.value;
  if (rights) checkRights(rights, ['rights'], specimen, showing, report);
  pictures.forEach((picture, index) => {
    const path = ['pictures', index];
    if (!picture.alt)
      report.add(
        'picture-alt',
        specimen.at(path),
        `"${picture.file}" has no text for people who cannot see it`,
        'add alt: what the picture shows, in each language',
      );
    if (picture.rights) checkRights(picture.rights, [...path, 'rights'], specimen, showing, report);
    const own = { ...rights, ...picture.rights };
    if (own.image === undefined || own.licence === undefined) {
      const missing = [own.image === undefined ? 'image' : '', own.licence === undefined ? 'licence' : '']
        .filter((key) => key !== '')
        .join(' and ');
      report.add(
        'picture-rights',
        specimen.at(path),
        `nothing says under rights whose "${picture.file}" is (${missing} missing)`,
        'add rights: { image: who holds them, licence: … }',
      );
    }
    checkVenues(picture.file, own.venues, wanted, specimen.at([...path, 'file']), showing, report);
  });
}

/** The licence of a picture is known, and it is shown neither before its embargo ends nor after its permission does. */
export function checkRights(
  rights: Rights,
  path: PropertyKey[],
  specimen: Located<Specimen>,
  showing: Showing,
  report: Report,
): void {
  if (rights.licence !== undefined) checkLicence(rights.licence, specimen.at([...path, 'licence']), report);
  checkEmbargo(
    rights.embargo,
    `"${specimen.value.id}"`,
    () => specimen.at([...path, 'embargo']),
    showing,
    report,
  );
  if (rights.until !== undefined && rights.until < showing.today && !showing.preview) {
    report.add(
      'permission',
      specimen.at([...path, 'until']),
      `the permission ended on ${rights.until}`,
      'renew it, or remove the picture',
    );
  }
}

function checkLicence(licence: string, span: Span, report: Report): void {
  if (isLicence(licence)) return;
  report.add(
    'licence',
    span,
    `"${licence}" is no known licence${didYouMean(licence, licenceIds)}`,
    'give an SPDX identifier such as CC-BY-4.0, LicenseRef-… for an agreement of your own, or the address of the licence',
  );
}

function checkEmbargo(
  embargo: string | undefined,
  what: string,
  span: () => Span,
  showing: Showing,
  report: Report,
): void {
  if (embargo === undefined || embargo <= showing.today || showing.preview) return;
  report.add('embargo', span(), `${what} is under embargo until ${embargo}`, 'wait, or build a preview');
}
