import { expect, test } from 'vitest';
import { parseNexusTrees, writeNewick } from '../../../analysis/tree/index.ts';

// NEXUS is an open standard: Maddison, Swofford and Maddison 1997, Systematic Biology 46: 590–621
const text = `#NEXUS
[ an invented example ]
Begin Taxa; Dimensions ntax=3; Taxlabels A B C; End;
BEGIN TREES;
  Title 'a title; with a semicolon';
  Translate 1 reed_one, 2 'reed two', 3 reed-three;
  tree first = [&R] ((1:1,2:2):0.5,3);
  TREE * 'second one' = (1,(2,3));
END;`;

test('all trees of the block are read with the names of its table and the default marked', () => {
  const trees = parseNexusTrees(text);
  expect(trees.map(({ name, preferred }) => [name, preferred])).toEqual([
    ['first', false],
    ['second one', true],
  ]);
  expect(writeNewick(trees[0]!.tree)).toBe("((reed_one:1,'reed two':2):0.5,reed-three);");
  expect(writeNewick(trees[1]!.tree)).toBe("(reed_one,('reed two',reed-three));");
});

test('underscores of unquoted names become spaces when asked for', () => {
  expect(parseNexusTrees(text, { underscores: 'space' })[0]!.tree.label.slice(0, 2)).toEqual([
    'reed one',
    'reed two',
  ]);
});

test.each([
  ['((a,b));', '1:1  a NEXUS text starts with "#NEXUS"'],
  ['#NEXUS begin data; end;', '1:1  no tree in a TREES block'],
  ['#NEXUS begin trees; tree t = (a,b);', '1:14  TREES block is never closed: expected "end;"'],
  ['#NEXUS begin trees; translate 1 a 2 b; end;', '1:35  unexpected "2": expected "," or ";"'],
  ['#NEXUS begin trees; translate 1 a, 1 b; end;', '1:36  translate table: "1" stands twice'],
  ['#NEXUS begin trees; tree (a,b); end;', '1:26  a tree needs a name, got "("'],
])('the mistake in %j is named', (wrong, message) => {
  expect(() => parseNexusTrees(wrong)).toThrow(message);
});
