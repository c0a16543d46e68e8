import { expect, test } from 'vitest';
import {
  childrenOf,
  parseNewick,
  rootOf,
  tipsOf,
  TreeTextError,
  writeNewick,
} from '../../../analysis/tree/index.ts';

// The Newick format is an open standard: evolution.genetics.washington.edu/phylip/newicktree.html
test.each([
  '(,(,,),);',
  '(A,B,(C,D));',
  '(A,B,(C,D)E)F;',
  '(:0.1,:0.2,(:0.3,:0.4):0.5);',
  '(A:0.1,B:0.2,(C:0.3,D:0.4)E:0.5)F;',
])('trees with nameless tips are refused and all others read: %s', (text) => {
  if (/[,(][,:)]/.test(text)) expect(() => parseNewick(text)).toThrow('expected a name or "("');
  else expect(writeNewick(parseNewick(text))).toBe(text);
});

test('quotes, doubled quotes, comments, exponents and space are read', () => {
  const tree = parseNewick("( 'it''s (one)' :1e-2, [a [nested] comment] two_words:.5\n)root[&R] ;");
  expect(tree.label).toEqual(["it's (one)", 'two_words', 'root']);
  expect([...tree.branchLength]).toEqual([0.01, 0.5, NaN]);
  expect(writeNewick(tree)).toBe("('it''s (one)':0.01,two_words:0.5)root;");
});

test('an underscore is a space only when asked for, and never inside quotes', () => {
  const text = "(a_b,'c_d');";
  expect(parseNewick(text).label.slice(0, 2)).toEqual(['a_b', 'c_d']);
  expect(parseNewick(text, { underscores: 'space' }).label.slice(0, 2)).toEqual(['a b', 'c_d']);
});

test('children come before parents, in the order written, polytomies included', () => {
  const tree = parseNewick('((a,b,c,d)x,e)r;');
  expect(rootOf(tree)).toBe(6);
  expect(childrenOf(tree, 4).map((node) => tree.label[node])).toEqual(['a', 'b', 'c', 'd']);
  expect(tipsOf(tree).map((node) => tree.label[node])).toEqual(['a', 'b', 'c', 'd', 'e']);
  expect([...tree.parent].every((parent, node) => parent > node || parent === -1)).toBe(true);
});

test('a tree of one tip is a tree', () => {
  expect(writeNewick(parseNewick('alone;'))).toBe('alone;');
});

test('a comb 100 000 forks deep is read and written', () => {
  const deep = 100_000;
  const text = `${'('.repeat(deep)}t${',u)'.repeat(deep)};`;
  const tree = parseNewick(text);
  expect(tree.parent.length).toBe(2 * deep + 1);
  expect(writeNewick(tree).length).toBe(text.length);
});

test.each([
  ['(a,b', 1, 1, '"(" is never closed'],
  ['(a,b);\n(c,d);', 2, 1, 'unexpected "(" after the tree\'s ";"'],
  ['(a,\n b:x);', 2, 4, 'branch length must be a number, got "x"'],
  ['(a,b)', 1, 6, 'the text ends: expected ";"'],
  ['(a b,c);', 1, 4, 'unexpected "b": expected "," or ")"'],
  ['(a,[oops b);', 1, 4, 'comment is never closed: expected "]"'],
  ["(a,'oops);", 1, 4, 'quoted name is never closed: expected "\'"'],
  ['(a],b);', 1, 3, 'unexpected "]": no comment is open'],
  ['', 1, 1, 'the text ends: expected a name or "("'],
])('the mistake in %j is placed at %d:%d', (text, line, column, reason) => {
  try {
    parseNewick(text);
    expect.unreachable();
  } catch (error) {
    expect(error).toBeInstanceOf(TreeTextError);
    expect(error).toMatchObject({ line, column, reason, message: `${line}:${column}  ${reason}` });
  }
});
