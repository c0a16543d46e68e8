import { expect, test } from 'vitest';
import { fitMatrix, type Character } from '../../../analysis/characters/index.ts';
import { parseNewick } from '../../../analysis/tree/index.ts';
import { charactersOf } from '../../reference/character-rows.ts';
import { everyTree } from '../../reference/every-tree.ts';
import known from '../../reference/values/parsimony.json' with { type: 'json' };

const { matrix, minLength, treesListedInDocumentation: printed } = known.matrix1;
const best = `${known.matrix1.best[0]!.tree};`;
const columns = charactersOf(matrix);

test.each(printed)(
  'a printed best tree taken for the shortest: $tree has its 9 steps, and another tree has 8',
  ({ tree: newick }) => {
    expect(fitMatrix(parseNewick(`${newick};`), columns).steps).toBe(9);
    const shortest = everyTree(Object.keys(matrix)).filter((tree) => fitMatrix(tree, columns).steps < 9);
    expect(shortest.map((tree) => fitMatrix(tree, columns).steps)).toEqual([minLength]);
  },
);

test('characters that cannot tell trees apart counted in: they raise the consistency of any tree, not its retention', () => {
  const tree = parseNewick(best);
  const once: Character = new Map(
    Object.keys(matrix).map((label) => [label, [label === 'Beta' ? '1' : '0']]),
  );
  const padded = [...columns, ...Array.from({ length: 10 }, () => once)];
  const [plain, raised] = [fitMatrix(tree, columns), fitMatrix(tree, padded)];
  // (6 + 10) / (8 + 10) by hand
  expect([plain.consistency, raised.consistency]).toEqual([0.75, 16 / 18]);
  expect([plain.retention, raised.retention]).toEqual([0.6, 0.6]);
  const honest = fitMatrix(tree, padded, { informativeOnly: true });
  expect([honest.counted, honest.consistency]).toEqual([5, 5 / 7]);
});

test('a retention index of 0 / 0: it is null where no tree could save a step, for one character and for a matrix', () => {
  const tree = parseNewick(best);
  const onlyInDelta = columns[5]!;
  const fit = fitMatrix(tree, [onlyInDelta]);
  expect([fit.characters[0]!.maximum, fit.characters[0]!.minimum]).toEqual([1, 1]);
  expect([fit.characters[0]!.retention, fit.retention]).toEqual([null, null]);
  expect(fitMatrix(tree, [onlyInDelta], { informativeOnly: true })).toMatchObject({
    counted: 0,
    consistency: null,
    retention: null,
  });
});
