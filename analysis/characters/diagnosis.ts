import type { Character } from './character.ts';

/** How a state is spread in a group of taxa and outside it. A taxon of several states may have any of them. */
export interface StateSpread {
  readonly inside: StateCounts;
  readonly outside: StateCounts;
  /** Every member has the state for sure: `strict` fails for a member that is not scored, `scored` passes it over. */
  readonly universal: Readings;
  /** No taxon outside can have it, with the same two readings. */
  readonly unique: Readings;
}

/** Taxa scored, and those of them that have or may have the state. */
export interface StateCounts {
  readonly scored: number;
  readonly having: number;
}

/** What holds if an unscored taxon counts against it, and if it does not count. */
export interface Readings {
  readonly strict: boolean;
  readonly scored: boolean;
}

/**
 * Spread of a state in a group and outside it. A state is diagnostic of the group, among the taxa coded, where it is unique and
 * universal (common practice, no source). Where no member is scored, nothing is universal in either reading.
 */
export function spreadOfState(
  character: Character,
  state: string,
  group: { readonly inside: readonly string[]; readonly outside: readonly string[] },
): StateSpread {
  const [members, others] = [group.inside, group.outside].map((taxa) =>
    taxa.map((taxon) => new Set(character.get(taxon) ?? [])),
  ) as [Set<string>[], Set<string>[]];
  const scoredMembers = members.filter(({ size }) => size > 0);
  const scoredOthers = others.filter(({ size }) => size > 0);
  const having = (taxa: readonly ReadonlySet<string>[]) => taxa.filter((states) => states.has(state)).length;
  const allSure =
    scoredMembers.length > 0 && scoredMembers.every((states) => states.size === 1 && states.has(state));
  const noneOutside = having(others) === 0;
  return {
    inside: { scored: scoredMembers.length, having: having(members) },
    outside: { scored: scoredOthers.length, having: having(others) },
    universal: { strict: allSure && scoredMembers.length === members.length, scored: allSure },
    unique: { strict: noneOutside && scoredOthers.length === others.length, scored: noneOutside },
  };
}
