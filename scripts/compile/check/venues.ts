import type { Report } from '../findings/report.ts';
import type { AuthoredLineage } from '../schema/index.ts';
import type { Span } from '../source/source-text.ts';
import type { Located } from '../source/yaml-source.ts';
import type { Showing } from './permissions.ts';

/** A place where a lineage is shown. */
export type Venue = AuthoredLineage['venues'][number];

/** Where a lineage is to be shown: always on pages, and wherever else lineage.yaml says. */
export function venuesOf(lineage: Located<AuthoredLineage> | undefined): readonly Venue[] {
  return [...new Set<Venue>(['pages', ...(lineage?.value.venues ?? [])])];
}

const places: Record<Venue, string> = {
  pages: 'on pages',
  gallery: 'in a gallery',
  class: 'in a class',
  print: 'in print',
};

/** A picture is used only where its rights allow; without a list it may be shown everywhere. A preview is seen by nobody outside. */
export function checkVenues(
  file: string,
  allowed: readonly Venue[] | undefined,
  wanted: readonly Venue[],
  span: Span,
  { preview }: Showing,
  report: Report,
): void {
  const refused = allowed ? wanted.filter((venue) => !allowed.includes(venue)) : [];
  if (refused.length === 0 || preview) return;
  report.add(
    'permission',
    span,
    `"${file}" may be shown in ${allowed!.join(', ') || 'no venue'}, not ${refused.map((venue) => places[venue]).join(' or ')}`,
    refused.includes('pages')
      ? 'ask for permission, or take the picture off the list'
      : 'ask for permission, take the picture off the list, or take the venue off venues in lineage.yaml',
  );
}

/** Sensitive material stays on pages, which say so, and out of places that one comes to unasked. */
export function checkSensitive(
  lineage: Located<AuthoredLineage> | undefined,
  { preview }: Showing,
  report: Report,
): void {
  const { venues = [], sensitive = [] } = lineage?.value ?? {};
  if (!lineage || sensitive.length === 0 || preview) return;
  venues.forEach((venue, index) => {
    if (venue !== 'gallery' && venue !== 'class') return;
    report.add(
      'permission',
      lineage.at(['venues', index]),
      `this lineage is marked ${sensitive.join(' and ')}, and is to be shown ${places[venue]}`,
      'take the venue off the list; what may be shown there is for the communities concerned to say',
    );
  });
}
