import { describe, expect, it } from 'vitest';
import { compileChanged, findingsAfter } from '../fixtures/changed-lineage.ts';

const states = 'states: [{ id: flat, label: { en: flat } }, { id: domed, label: { en: domed } }]';
const forehead = (scored: string, rest = '') =>
  `- id: forehead\n  label: { en: forehead }\n  ${rest || states}\n  scored: ${scored}\n`;
const good = '{ flat: [saltula-prima, saltula-brevis], domed: [collina-vivens] }';

describe('messages about characters', () => {
  it('an animal is misspelt', async () => {
    const text = forehead('{ flat: [saltula-prima], domed: [collina-vivans] }');
    expect(await findingsAfter({ 'characters.yaml': text })).toMatchInlineSnapshot(`
      "characters.yaml:4:44-58 error unknown-id
        unknown taxon: "collina-vivans"; did you mean "collina-vivens"?
        name one of taxa.yaml, or add it there"
    `);
  });

  it('a state is misspelt', async () => {
    const text = forehead('{ flat: [saltula-prima], dommed: [collina-vivens] }');
    expect(await findingsAfter({ 'characters.yaml': text })).toMatchInlineSnapshot(`
      "characters.yaml:4:36-42 error unknown-id
        unknown state: "dommed"; did you mean "domed"?
        name a state of this character, or add it to its states"
    `);
  });

  it('a state is given twice', async () => {
    const twice = 'states: [{ id: flat, label: { en: flat } }, { id: flat, label: { en: level } }]';
    expect(await findingsAfter({ 'characters.yaml': forehead('{ flat: [saltula-prima] }', twice) }))
      .toMatchInlineSnapshot(`
      "characters.yaml:3:53-57 error duplicate-id
        the state "flat" is given twice
        give one of the two another id, or remove it"
    `);
  });

  it('an animal stands twice under one state', async () => {
    const text = forehead('{ flat: [saltula-prima, saltula-prima], domed: [collina-vivens] }');
    expect(await findingsAfter({ 'characters.yaml': text })).toMatchInlineSnapshot(`
      "characters.yaml:4:35-48 error duplicate-id
        "saltula-prima" stands twice under "flat"
        remove one of the two, or put it under the other state that it may have"
    `);
  });

  it('one state alone is scored', async () => {
    const text = forehead('{ flat: [saltula-prima, saltula-brevis] }');
    expect(await findingsAfter({ 'characters.yaml': text })).toMatchInlineSnapshot(`
      "characters.yaml:4:11-52 warning character-constant
        "forehead" is scored in one state only, so it cannot change on the tree
        score an animal in another state, or leave the character out"
    `);
  });

  it('a label lacks a language, and a source is unknown', async () => {
    const text =
      forehead(good).replace('label: { en: forehead }', 'label: { es: frente }') + '  sources: [nobody]\n';
    expect(await findingsAfter({ 'characters.yaml': text })).toMatchInlineSnapshot(`
      "characters.yaml:2:12-14 error unknown-language
        "es" is no language of this lineage; did you mean "en"?
        add it to languages in lineage.yaml, or remove the text
      characters.yaml:5:13-19 error unknown-reference
        unknown reference: "nobody"
        name one of references.bib, or add it there"
    `);
  });
});

it('a character has its changes on the reference tree, and an unsure animal counts for neither state', async () => {
  const scored =
    '{ flat: [saltula-prima, saltula-brevis, collina-nana, collina-longa], domed: [collina-vivens, collina-longa] }';
  const { compiled } = await compileChanged({ 'characters.yaml': forehead(scored) });
  const [character] = compiled!.characters!;
  expect(character).toMatchObject({ id: 'forehead', ordered: false, steps: 1 });
  expect(character!.scored).toContainEqual({ taxon: 'collina-longa', states: ['flat', 'domed'] });
  for (const { node, from, to } of character!.changes) {
    expect([from, to]).toEqual([['flat'], ['domed']]);
    expect(compiled!.trees[0]!.nodes.map(({ id }) => id)).toContain(node);
  }
});
