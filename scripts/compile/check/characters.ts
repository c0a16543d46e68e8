import { didYouMean } from '../findings/suggest.ts';
import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import type { AuthoredCharacter } from '../schema/index.ts';
import type { Located } from '../source/yaml-source.ts';
import { expectId } from './expect-id.ts';
import type { Known } from './known.ts';

/** Every state and animal that a character names is there, none twice, and two states are scored at least. */
export function checkCharacters({ characters }: LineageRecords, known: Known, report: Report): void {
  for (const character of characters.records) {
    character.value.sources?.forEach((key, index) =>
      expectId('reference', key, known.reference, character.at(['sources', index]), report),
    );
    checkSoftPart(character, characters.records, report);
    const isWhole = [checkStates(character, report), checkScores(character, known, report)].every(Boolean);
    if (isWhole) checkUse(character, report);
  }
}

/** True where no two states share an id. */
function checkStates({ value, at }: Located<AuthoredCharacter>, report: Report): boolean {
  const ids = value.states.map(({ id }) => id);
  const again = ids.flatMap((id, index) => (ids.indexOf(id) < index ? [index] : []));
  for (const index of again)
    report.add(
      'duplicate-id',
      at(['states', index, 'id']),
      `the state "${ids[index]}" is given twice`,
      'give one of the two another id, or remove it',
    );
  return again.length === 0;
}

/** True where every state and animal that is scored is known. */
function checkScores(character: Located<AuthoredCharacter>, known: Known, report: Report): boolean {
  const { value, at, atKey } = character;
  const states = value.states.map(({ id }) => id);
  let isWhole = true;
  for (const [state, animals] of Object.entries(value.scored)) {
    if (!states.includes(state)) {
      isWhole = false;
      report.add(
        'unknown-id',
        atKey(['scored'], state),
        `unknown state: "${state}"${didYouMean(state, states)}`,
        'name a state of this character, or add it to its states',
      );
    }
    animals.forEach((animal, index) => {
      const span = at(['scored', state, index]);
      if (!expectId('taxon', animal, known.taxon, span, report)) isWhole = false;
      else if (animals.indexOf(animal) < index)
        report.add(
          'duplicate-id',
          span,
          `"${animal}" stands twice under "${state}"`,
          'remove one of the two, or put it under the other state that it may have',
        );
    });
  }
  return isWhole;
}

/** The state of having a soft part, and the sign that it leaves, are states that there are. */
function checkSoftPart(
  { value: { softPart, states }, at }: Located<AuthoredCharacter>,
  all: readonly Located<AuthoredCharacter>[],
  report: Report,
): void {
  if (!softPart) return;
  const { state, sign } = softPart;
  const bones = all.filter(({ value }) => !value.softPart);
  const expect = (kind: string, id: string, known: readonly string[], path: string[]) => {
    if (known.includes(id)) return true;
    report.add(
      'unknown-id',
      at(['softPart', ...path]),
      `unknown ${kind}: "${id}"${didYouMean(id, known)}`,
      `name one of: ${known.join(', ') || 'none is there yet'}`,
    );
    return false;
  };
  expect(
    'state',
    state,
    states.map(({ id }) => id),
    ['state'],
  );
  if (!sign) return;
  const known = bones.map(({ value }) => value.id);
  if (!expect('character of bones', sign.character, known, ['sign', 'character'])) return;
  const signStates = bones.find(({ value }) => value.id === sign.character)!.value.states;
  expect(
    'state',
    sign.state,
    signStates.map(({ id }) => id),
    ['sign', 'state'],
  );
}

/** A character of which only one state is scored tells nothing about relatives. */
function checkUse({ value, at }: Located<AuthoredCharacter>, report: Report): void {
  const used = value.states.filter(({ id }) => (value.scored[id]?.length ?? 0) > 0);
  if (used.length >= 2) return;
  report.add(
    'character-constant',
    at(['scored']),
    `"${value.id}" is scored in ${used.length === 1 ? 'one state only' : 'no animal'}, so it cannot change on the tree`,
    'score an animal in another state, or leave the character out',
  );
}
