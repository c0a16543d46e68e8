import type { CompiledCharacter, CompiledLineage } from '../../scripts/compile/contract.ts';
import type { LineageView } from '../lineage/view.ts';

type SoftPart = NonNullable<CompiledCharacter['softPart']>;
type Bracket = SoftPart['brackets'][number];

/** The characters that are soft parts, each with what brackets it. */
export function softParts({
  characters = [],
}: CompiledLineage): { character: CompiledCharacter; softPart: SoftPart }[] {
  return characters.flatMap((character) =>
    character.softPart && character.softPart.brackets.length > 0
      ? [{ character, softPart: character.softPart }]
      : [],
  );
}

/** A level as it is written in the trade: `II′` without a mark on bone. Several where what is not known leaves them open. */
export function levelText({ readings }: Bracket): string {
  return readings.map(({ level, prime }) => `${level}${prime ? '′' : ''}`).join(' / ');
}

/** A cell of a table of animals: plain, or animals and what is said of all of them. */
export type AnimalCell = string | number | { animals: string[]; has: string };

/** What a level amounts to, in words; each where several are open. */
export function levelWords({ voice }: LineageView, { readings }: Bracket): string {
  if (readings.length === 0) return voice.say('soft.oneSide');
  const levels = [...new Set(readings.map(({ level }) => level))];
  return levels.map((level) => voice.say(`soft.level.${level}`)).join(' / ');
}

/** A fossil in the table: its living relatives on both sides, the mark on its bones, the level, and what it amounts to. */
export function softRow(view: LineageView, bracket: Bracket): { animal: string; cells: AnimalCell[] } {
  const { voice } = view;
  const answer = (has: boolean | null) =>
    voice.say(has === null ? 'soft.open' : has ? 'soft.yes' : 'soft.no');
  const [near, far] = bracket.sides.map(({ living, has }) => ({
    animals: living.map((taxon) => view.requireTaxon(taxon).name),
    has: answer(has),
  }));
  return {
    animal: view.requireTaxon(bracket.taxon).name,
    cells: [near ?? '', far ?? '', answer(bracket.sign), levelText(bracket), levelWords(view, bracket)],
  };
}

/** Fossils of one level together, in the order in which the levels come. */
export function softGroups(
  view: LineageView,
  { brackets }: SoftPart,
): { level: string; says: string; animals: string[] }[] {
  const groups = new Map<string, { level: string; says: string; animals: string[] }>();
  for (const bracket of brackets) {
    const level = levelText(bracket);
    const group = groups.get(level) ?? { level, says: levelWords(view, bracket), animals: [] };
    group.animals.push(view.requireTaxon(bracket.taxon).name);
    groups.set(level, group);
  }
  return [...groups.values()]
    .filter(({ level }) => level !== '')
    .sort((one, other) => one.level.length - other.level.length);
}
