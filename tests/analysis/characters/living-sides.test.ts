import { expect, test } from 'vitest';
import { livingSides } from '../../../analysis/characters/index.ts';
import { parseNewick } from '../../../analysis/tree/index.ts';

// an invented tree; L is living, F a fossil
const tree = parseNewick('(Lout,((F1,(L1,L2)),(F2,(F3,L3))));');
const isLiving = (tip: number) => tree.label[tip]!.startsWith('L');
const sidesOf = (name: string) =>
  livingSides(tree, tree.label.indexOf(name), isLiving).map(({ tips }) => tips.map((tip) => tree.label[tip]));

test('the nearer side hangs on the first fork above a fossil that has living animals, the other on the next', () => {
  expect(sidesOf('F3')).toEqual([['L3'], ['L1', 'L2']]);
  expect(sidesOf('F2')).toEqual([['L3'], ['L1', 'L2']]);
  expect(sidesOf('F1')).toEqual([['L1', 'L2'], ['L3']]);
});

test('a fossil with living relatives on one side only is not bracketed', () => {
  const alone = parseNewick('(F1,(F2,L1));');
  expect(livingSides(alone, alone.label.indexOf('F2'), (tip) => alone.label[tip] === 'L1')).toHaveLength(1);
  expect(livingSides(alone, alone.label.indexOf('F1'), () => false)).toEqual([]);
});
