import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import { resolveAge, type ResolvedAge } from './ages.ts';
import { indexScheme, type SchemeIndex } from './scheme-index.ts';
import { resolveSection, type ResolvedSection } from '../section/resolve-section.ts';
import { resolveSpecimens, type ResolvedSpecimen } from './specimens.ts';
import { nameTips, type NamedTipsTree } from './tips.ts';
import { resolveOwnDrawings } from '../own-drawing/resolve-own-drawings.ts';
import type { OwnDrawing } from '../own-drawing/read-own-drawing.ts';
import { parseTrees } from './trees.ts';

/** A lineage with its parts brought together: tables joined to specimens, ages in Ma, trees parsed. */
export interface ResolvedLineage {
  records: LineageRecords;
  scheme: SchemeIndex;
  horizonAges: Map<string, ResolvedAge>;
  /** Ages that taxa.yaml gives, for taxa that have one. */
  givenAges: Map<string, ResolvedAge>;
  specimens: ResolvedSpecimen[];
  /** Authors' own drawings by specimen. */
  ownDrawings: Map<string, OwnDrawing>;
  trees: NamedTipsTree[];
  section: ResolvedSection | undefined;
}

/** Resolves the records of a lineage; what cannot be resolved is reported and left out. */
export function resolveLineage(records: LineageRecords, report: Report): ResolvedLineage {
  const scheme = indexScheme(records.scheme?.value);
  const horizonAges = new Map<string, ResolvedAge>();
  for (const horizon of records.horizons.records) {
    const age = resolveAge(horizon.value.age, horizon, ['age'], report);
    if (age) horizonAges.set(horizon.value.id, age);
  }
  const givenAges = new Map<string, ResolvedAge>();
  for (const taxon of records.taxa.records) {
    const age = taxon.value.age && resolveAge(taxon.value.age, taxon, ['age'], report);
    if (age) givenAges.set(taxon.value.id, age);
  }
  const specimens = resolveSpecimens(records, scheme, report);
  return {
    records,
    scheme,
    horizonAges,
    givenAges,
    specimens,
    ownDrawings: resolveOwnDrawings(records, specimens, scheme, report),
    trees: nameTips(parseTrees(records, report), records, report),
    section: resolveSection(records, report),
  };
}
