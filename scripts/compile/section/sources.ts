import type { LineageRecords } from '../read/lineage-records.ts';
import type { Span } from '../source/source-text.ts';

/** Every key of a reference that the section and its table of levels name, with its place. */
export function sectionSources({ section, sheets }: LineageRecords): { key: string; span: Span }[] {
  if (!section) return [];
  const { generation, drawing, sources = [], levels } = section.value;
  const table = sheets.get(levels);
  const column = table?.header.findIndex(({ text }) => text === 'source') ?? -1;
  const cells = table && column >= 0 ? table.rows.map((row) => row[column]!) : [];
  const named = (key: string | undefined, path: PropertyKey[]) =>
    key === undefined ? [] : [{ key, span: section.at(path) }];
  return [
    ...named(generation?.source, ['generation', 'source']),
    ...named(drawing?.source, ['drawing', 'source']),
    ...sources.flatMap((key, index) => named(key, ['sources', index])),
    ...cells.flatMap(({ text, span }) => (text === '' ? [] : [{ key: text, span }])),
  ];
}
