import type { Character } from '../../analysis/characters/index.ts';

/** Characters, column by column, of a matrix with one letter a cell. */
export function charactersOf(matrix: Readonly<Record<string, string>>): Character[] {
  const rows = Object.entries(matrix);
  return Array.from(rows[0]![1], (_, column) => new Map(rows.map(([label, row]) => [label, [row[column]!]])));
}

/** One character from the states of each taxon, a letter each: several are one of these, none is not scored. */
export function characterOf(states: Readonly<Record<string, string>>): Character {
  return new Map(Object.entries(states).map(([label, letters]) => [label, [...letters]]));
}
