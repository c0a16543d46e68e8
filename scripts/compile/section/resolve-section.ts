import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import type { Section, Trait } from '../schema/index.ts';
import type { Located } from '../source/yaml-source.ts';
import { levelIds } from './level-ids.ts';
import { readIndividuals, type Individual } from './read-individuals.ts';
import { readLevels, type LevelRow } from './read-levels.ts';

/** A section with its tables read, and the trait that its individuals were measured for. */
export interface ResolvedSection {
  readonly record: Located<Section>;
  readonly trait: Trait;
  readonly levels: readonly LevelRow[];
  readonly individuals: readonly Individual[];
}

/** Reads the tables of the section; undefined where there is none, or where its trait or a table is missing, told before. */
export function resolveSection(records: LineageRecords, report: Report): ResolvedSection | undefined {
  const { section: record } = records;
  const trait = records.traits.records.find(({ value }) => value.id === record?.value.trait)?.value;
  if (!record || trait?.length === undefined) return undefined;
  const section = record.value;
  const [levelTable, individualTable] = [section.levels, section.individuals].map((file) =>
    records.sheets.get(file),
  );
  if (!levelTable || !individualTable) return undefined;
  const levels = readLevels(levelTable, records.horizons.declared, report);
  const rules = {
    section,
    measurement: trait.length,
    levels: levelIds(records),
    stages: new Map(section.wear.map(({ id }) => [id, true])),
  };
  return { record, trait, levels, individuals: readIndividuals(individualTable, rules, report) };
}
