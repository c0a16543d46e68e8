import { expect, test } from 'vitest';
import { buildTree, datedTree, parseNewick, requireTipsByLabel } from '../../../analysis/tree/index.ts';

test('a tree without a root, or with a parent before its child, is refused', () => {
  expect(() => buildTree(new Int32Array(0), new Float64Array(0), [])).toThrow(
    'a tree needs a root, as its last node',
  );
  expect(() => buildTree(Int32Array.of(1, 0), new Float64Array(2), ['', ''])).toThrow(
    'a tree needs a root, as its last node',
  );
  expect(() => buildTree(Int32Array.of(2, 0, -1), new Float64Array(3), ['', '', ''])).toThrow(
    'node 1 must come before its parent, got 0',
  );
});

test('tips that share a name are an error that says it', () => {
  expect(() => requireTipsByLabel(parseNewick('(a,(b,a));'))).toThrow('two tips are named "a"');
  expect([...requireTipsByLabel(parseNewick('(a,(b,c)a);'))]).toEqual([
    ['a', 0],
    ['b', 1],
    ['c', 2],
  ]);
});

test('a node older than the fork above it is named by the tips that meet there', () => {
  const tree = parseNewick('((a,b),c);');
  expect(() => datedTree(tree, Float64Array.of(0, 0, 9, 0, 5))).toThrow(
    'the fork of "a" and "b" is older than the fork above it by 4 million years',
  );
});
