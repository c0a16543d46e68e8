import type { LineageRecords } from '../read/lineage-records.ts';
import { indexScheme, type SchemeIndex } from '../resolve/scheme-index.ts';

/** Every id that is declared, whether or not its record is right: one mistake gives one finding. */
export interface Known {
  taxon: Map<string, unknown>;
  horizon: Map<string, unknown>;
  specimen: Map<string, unknown>;
  trait: Map<string, unknown>;
  term: Map<string, unknown>;
  reference: Map<string, unknown>;
  scheme: SchemeIndex;
  /** False when scheme.yaml exists but could not be read: then nothing is said about its ids. */
  schemeRead: boolean;
  /** Specimens that only a museum's table records are known once tables are read. */
  referencesRead: boolean;
}

/** Gathers the declared ids of a lineage. */
export function gatherKnown(records: LineageRecords): Known {
  return {
    taxon: records.taxa.declared,
    horizon: records.horizons.declared,
    specimen: new Map(records.specimens.declared),
    trait: records.traits.declared,
    term: records.glossary.declared,
    reference: new Map(records.references.map((reference) => [reference.key, reference])),
    scheme: indexScheme(records.scheme?.value),
    schemeRead: records.scheme !== undefined || !records.folder.files.includes('scheme.yaml'),
    referencesRead: true,
  };
}
