import { expect, test } from 'vitest';
import { characterWords } from '../../../components/figures/bracket-tree/character-words.ts';
import { changesByNode } from '../../../components/figures/bracket-tree/changes.ts';
import { lineageView } from '../../../components/lineage/view.ts';
import type { CompiledCharacter } from '../../../scripts/compile/contract.ts';
import { risingTips } from '../fixtures/hands.ts';
import { inventedLineage } from '../fixtures/invented-lineage.ts';

const lineage = inventedLineage(risingTips);
const view = lineageView(lineage, 'en');
const change = { node: 'side', from: ['flat'], to: ['domed'] };
const forehead: CompiledCharacter = {
  id: 'forehead',
  label: { en: 'forehead' },
  states: [
    { id: 'flat', label: { en: 'flat' } },
    { id: 'domed', label: { en: 'domed' } },
  ],
  ordered: false,
  scored: [],
  sources: [],
  steps: 1,
  changes: [change],
};

test('a character whose certain changes are alike says from what to what', () => {
  expect(characterWords(view, forehead)).toBe('flat to domed. Changed at least once.');
});

test('one that changes in ways that differ only lists its states', () => {
  const back = { node: 'first', from: ['domed'], to: ['flat'] };
  const both = { ...forehead, steps: 2, changes: [change, back] };
  expect(characterWords(view, both)).toBe('flat, domed. Changed at least 2 times.');
});

test('one whose changes have no certain place says so', () => {
  const open = { ...forehead, steps: 2, changes: [] };
  expect(characterWords(view, open)).toBe(
    'flat, domed. Changed at least 2 times. On which branches, the tree does not say.',
  );
});

test('without a tree a character has states and no count', () => {
  expect(characterWords(view, { ...forehead, steps: null, changes: [] })).toBe('flat, domed.');
});

test('a branch bears the numbers of all that change on it, in the order of the records', () => {
  const other = { ...forehead, id: 'rim', changes: [change, { ...change, node: 'first' }] };
  expect([...changesByNode({ ...lineage, characters: [forehead, other] })]).toEqual([
    ['side', [1, 2]],
    ['first', [2]],
  ]);
});
