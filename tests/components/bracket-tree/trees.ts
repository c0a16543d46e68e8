import type { CompiledLineage } from '../../../scripts/compile/contract.ts';
import { lineageView } from '../../../components/lineage/view.ts';
import { inventedLineage, type InventedTip } from '../fixtures/invented-lineage.ts';
import { bracketData, type BracketData } from '../../../components/figures/bracket-tree/bracket-data.ts';

/** So many invented tips, of every status, from old to young, with names of uneven length. */
export function manyTips(count: number): InventedTip[] {
  return Array.from({ length: count }, (_, index): InventedTip => {
    const living = index % 7 === 6;
    const from = living ? 0 : 50 - (index * 45) / count;
    const shared = { id: `tip-${index}`, name: `Invena ${'abcdefghij'.slice(0, 3 + (index % 8))}`, from };
    const to = living ? 0 : Math.max(0.5, from - 2.5);
    if (index % 5 === 3) return { ...shared, to, inferred: [20, 30, 40] };
    if (index % 5 === 4) return { ...shared, to, atLeast: 12 };
    return { ...shared, to, ...(index % 11 === 10 ? {} : { value: 10 + index / 4 }) };
  });
}

/** The bracket tree of an invented lineage, with one animal turned to the middle. */
export function bracketOf(lineage: CompiledLineage, focal = ''): BracketData {
  const data = bracketData(lineageView(lineage, 'en'), focal);
  if (!data) throw new Error('the invented lineage has a tree');
  return data;
}

/** The bracket tree of so many invented animals; of one, the tree is that animal alone. */
export function manyKin(count: number, focal = ''): BracketData {
  const lineage = inventedLineage(manyTips(count));
  if (count === 1) lineage.trees[0]!.nodes = [{ id: 'tip-0', parent: null, ageMa: 48, taxon: 'tip-0' }];
  return bracketOf(lineage, focal);
}
