import { bracketReadings, livingSides, type Character } from '../../../analysis/characters/index.ts';
import { tipsOf, type DatedTree } from '../../../analysis/tree/index.ts';
import type { CompiledCharacter } from '../contract-characters.ts';
import type { AuthoredCharacter } from '../schema/index.ts';
import { nodeIds } from './compose-records.ts';

type SoftPart = NonNullable<CompiledCharacter['softPart']>;

/** What the living say of a part that does not preserve, for every fossil of the tree that does not show it. */
export function composeSoftPart(
  { id, softPart }: AuthoredCharacter,
  {
    tree,
    matrix,
    living,
  }: { tree: DatedTree; matrix: ReadonlyMap<string, Character>; living: ReadonlySet<string> },
): SoftPart {
  const { state, sign } = softPart!;
  const scored = matrix.get(id)!;
  const ids = nodeIds(tree.label);
  const nameOf = (tip: number) => tree.label[tip]!;
  const isLiving = (tip: number) => living.has(nameOf(tip));
  const fossils = tipsOf(tree).filter((tip) => !isLiving(tip) && !scored.has(nameOf(tip)));
  return {
    state,
    ...(sign && { sign }),
    brackets: fossils.map((tip) => {
      const sides = livingSides(tree, tip, isLiving).map(({ fork, tips }) => {
        const names = tips.map(nameOf);
        return {
          fork: ids[fork]!,
          living: names,
          has: shared(names.map((name) => hasState(scored, name, state))),
        };
      });
      const onBone = sign ? hasState(matrix.get(sign.character), nameOf(tip), sign.state) : false;
      return { taxon: nameOf(tip), sides, sign: sign ? onBone : null, readings: readingsOf(sides, onBone) };
    }),
  };
}

/** Whether an animal has a state; null where it is not scored, or has one of several. */
function hasState(character: Character | undefined, taxon: string, state: string): boolean | null {
  const own = [...(character?.get(taxon) ?? [])];
  return own.length === 1 ? own[0] === state : null;
}

/** What all say alike; null where one is not known or they differ. */
function shared(answers: readonly (boolean | null)[]): boolean | null {
  return answers.every((answer) => answer === answers[0]) ? (answers[0] ?? null) : null;
}

/** Every reading that is open; none without living relatives on both sides. */
function readingsOf(
  sides: SoftPart['brackets'][number]['sides'],
  onBone: boolean | null,
): SoftPart['brackets'][number]['readings'] {
  if (sides.length < 2) return [];
  const [first, second] = sides.map(({ has }) => has ?? undefined);
  const signs = onBone === null ? [true, false] : [onBone];
  return signs
    .flatMap((signOnBone) => bracketReadings({ first, second, signOnBone }))
    .sort((one, other) => one.level.length - other.level.length || Number(one.prime) - Number(other.prime));
}
