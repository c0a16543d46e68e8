import type { SectionLevel } from '../../analysis/trend/index.ts';
import sections from './values/sections.json' with { type: 'json' };

/** One of the three sections of ten levels. */
export type ReferenceSection = (typeof sections.series)[keyof typeof sections.series];

/** The sections by name. */
export const referenceSections: Readonly<Record<string, ReferenceSection>> = sections.series;

/** A section's levels. */
export function levelsOf(
  section: Pick<ReferenceSection, 'elapsedMyr' | 'means' | 'variances' | 'n'>,
): SectionLevel[] {
  return section.elapsedMyr.map((elapsedMyr, k) => ({
    elapsedMyr,
    mean: section.means[k]!,
    variance: section.variances[k]!,
    n: section.n[k]!,
  }));
}
