import { describe, expect, it } from 'vitest';
import { findingsAfter, replaced } from '../fixtures/changed-lineage.ts';

describe('messages about trees', () => {
  it('a bracket is missing in a tree', async () => {
    expect(await findingsAfter({ 'lineage.yaml': replaced('saltula-brevis),', 'saltula-brevis,') }))
      .toMatchInlineSnapshot(`
      "lineage.yaml:9:14-15 error tree-syntax
        the tree "main" cannot be read: "(" is never closed
        a tree reads ((one,other),third); with a semicolon at its end"
    `);
  });

  it('a tip is no taxon', async () => {
    expect(await findingsAfter({ 'lineage.yaml': replaced('collina-media)', 'collina-medea)') }))
      .toMatchInlineSnapshot(`
      "lineage.yaml:9:61-74 error tip-without-taxon
        the tip "collina-medea" of the tree "main" is no taxon; did you mean "collina-media"?
        name tips by ids of taxa.yaml, or add the taxon there"
    `);
  });

  it('a tip stands twice', async () => {
    expect(await findingsAfter({ 'lineage.yaml': replaced('collina-media)', 'collina-nana)') }))
      .toMatchInlineSnapshot(`
      "lineage.yaml:9:61-73 error tip-twice
        "collina-nana" stands at two tips of the tree "main"
        keep one of them"
    `);
  });

  it('a tree has one tip', async () => {
    expect(
      await findingsAfter({
        'lineage.yaml': replaced(
          '((saltula-prima,saltula-brevis),((collina-nana,collina-media),(collina-longa,collina-vivens)));',
          'saltula-prima;',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "lineage.yaml:8:9-13 error tree-shape
        the tree "main" has one tip
        a tree relates two taxa at least"
    `);
  });

  it('a tree has neither text nor file', async () => {
    expect(
      await findingsAfter({
        'lineage.yaml': replaced(
          'newick: "((saltula-prima,saltula-brevis),((collina-nana,collina-media),(collina-longa,collina-vivens)));"',
          'note: { en: none }',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "lineage.yaml:8:9-13 error tree-choice
        the tree "main" has neither newick nor file
        give one of the two"
    `);
  });

  it('the root is younger than a tip', async () => {
    expect(await findingsAfter({ 'lineage.yaml': replaced('root: 40', 'root: 30') })).toMatchInlineSnapshot(`
      "lineage.yaml:8:9-13 error tree-age
        the tree "main" cannot be dated: root age must be at least 33 Ma, the age of tip "saltula-prima", got 30
        correct the root age, the branch lengths, or the ages of the finds"
    `);
  });

  it('the root has no age', async () => {
    expect(
      await findingsAfter({ 'lineage.yaml': replaced('{ method: equal-share, root: 40 }', 'equal-share') }),
    ).toMatchInlineSnapshot(`
      "lineage.yaml:10:13-24 error tree-age
        the tree "main" has no age for its root
        give root in dating, in Ma: { method: equal-share, root: 55 }"
    `);
  });

  it('two trees are preferred', async () => {
    expect(
      await findingsAfter({
        'lineage.yaml': replaced(
          '    source: hopper-notes',
          '    source: hopper-notes\n    prefer: true\n  - { id: other, newick: "((saltula-prima,saltula-brevis),collina-vivens);", dating: { method: equal-share, root: 40 }, prefer: true }',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "lineage.yaml:13:129-133 error tree-choice
        two trees are preferred
        keep prefer: true on the one whose numbers are printed"
    `);
  });

  it('a NEXUS file holds several trees and none is chosen', async () => {
    expect(
      await findingsAfter({
        'lineage.yaml': replaced(
          'newick: "((saltula-prima,saltula-brevis),((collina-nana,collina-media),(collina-longa,collina-vivens)));"',
          'file: trees.nex',
        ),
        'trees.nex':
          '#NEXUS\nBEGIN TREES;\nTREE one = (saltula-prima,saltula-brevis);\nTREE two = (saltula-prima,collina-nana);\nEND;\n',
      }),
    ).toMatchInlineSnapshot(`
      "trees.nex:1:1-2 error tree-choice
        the file holds 2 trees, and none is marked with *
        name one in lineage.yaml, such as name: one"
    `);
  });

  it('a NEXUS file has a mistake', async () => {
    expect(
      await findingsAfter({
        'lineage.yaml': replaced(
          'newick: "((saltula-prima,saltula-brevis),((collina-nana,collina-media),(collina-longa,collina-vivens)));"',
          'file: trees.nex',
        ),
        'trees.nex': '#NEXUS\nBEGIN TREES;\nTREE one = (saltula-prima,saltula-brevis;\nEND;\n',
      }),
    ).toMatchInlineSnapshot(`
      "trees.nex:3:12-13 error tree-syntax
        the tree "main" cannot be read: "(" is never closed
        a tree reads ((one,other),third); with a semicolon at its end"
    `);
  });

  it('branch lengths put a tip outside its finds', async () => {
    const newick =
      '((saltula-prima:17,saltula-brevis:11.5):0,((collina-nana:20,collina-media:20):5,(collina-longa:20,collina-vivens:35):5):0);';
    const change = (text: string) =>
      text
        .replace(/newick: ".*"/, `newick: "${newick}"`)
        .replace('{ method: equal-share, root: 40 }', 'given');
    expect(await findingsAfter({ 'lineage.yaml': change })).toMatchInlineSnapshot(`
      "lineage.yaml:9:16-29 error tree-age
        "saltula-prima" stands at 23 Ma on the tree "main", and its finds are 34–32 Ma
        correct the branch lengths, or date the tree by another method"
    `);
  });

  it('a node of a tree with given ages is younger than a tip above which it stands', async () => {
    const given =
      '((saltula-prima:7,saltula-brevis:-11):1,((collina-nana:1,collina-media:1):1,(collina-longa:1,collina-vivens:1):1):1);';
    const change = (text: string) =>
      text
        .replace(/newick: ".*"/, `newick: "${given}"`)
        .replace('dating: { method: equal-share, root: 40 }', 'dating: given');
    expect(await findingsAfter({ 'lineage.yaml': change })).toMatchInlineSnapshot(`
      "lineage.yaml:8:9-13 error tree-age
        the tree "main" cannot be dated: tip "saltula-brevis" has a negative branch length, -11
        correct the root age, the branch lengths, or the ages of the finds"
    `);
  });

  it('a tree with given ages lacks a branch length', async () => {
    const change = (text: string) =>
      text.replace('dating: { method: equal-share, root: 40 }', 'dating: given');
    expect(await findingsAfter({ 'lineage.yaml': change })).toMatchInlineSnapshot(`
      "lineage.yaml:8:9-13 error tree-age
        the tree "main" cannot be dated: the fork of "collina-nana" and "collina-longa" has no branch length
        correct the root age, the branch lengths, or the ages of the finds"
    `);
  });
});
