import type { LineageRecords } from '../read/lineage-records.ts';
import { levelIds } from '../section/level-ids.ts';
import { indexScheme } from '../resolve/scheme-index.ts';
import type { Kind } from './expect-id.ts';

/** A set of ids that can be asked and listed. */
export interface IdSet {
  has(id: string): boolean;
  keys(): Iterable<string>;
}

/** Every id that is declared, by kind, whether or not its record is right: one mistake gives one finding. */
export type Known = Readonly<Record<Kind, IdSet>>;

/** Stands for ids of a file that could not be read: that is told once, and not again at everything that names them. */
const anything: IdSet = { has: () => true, keys: () => [] };

/** Gathers the declared ids of a lineage. */
export function gatherKnown(records: LineageRecords): Known {
  const { folder } = records;
  const scheme = indexScheme(records.scheme?.value);
  const inScheme = (ids: IdSet) =>
    records.scheme === undefined && folder.files.includes('scheme.yaml') ? anything : ids;
  const list = (entries: { declared: IdSet; whole: boolean }) =>
    entries.whole ? entries.declared : anything;
  return {
    taxon: list(records.taxa),
    horizon: list(records.horizons),
    specimen: list(records.specimens),
    trait: list(records.traits),
    term: list(records.glossary),
    level: levelIds(records),
    'wear stage': new Map(records.section?.value.wear.map(({ id }) => [id, true])),
    reference: records.referencesRead ? new Map(records.references.map(({ key }) => [key, true])) : anything,
    landmark: inScheme(scheme.landmarks),
    axis: inScheme(scheme.axes),
    measurement: inScheme(scheme.measurements),
    view: inScheme(scheme.views),
  };
}
