import type { LineageRecords } from '../read/lineage-records.ts';

/** Ids of the levels of the section, as its table gives them; none where there is no section or no table. */
export function levelIds(records: LineageRecords): Map<string, true> {
  const table = records.sheets.get(records.section?.value.levels ?? '');
  const column = table?.header.findIndex(({ text }) => text === 'level') ?? -1;
  if (!table || column < 0) return new Map();
  return new Map(table.rows.map((row) => [row[column]!.text, true]));
}
