import { childrenOf, isTip, type Tree } from '../tree/index.ts';

/** Living relatives on one side of a fossil, and the fork where their line and its own part. */
export interface LivingSide {
  readonly fork: number;
  readonly tips: readonly number[];
}

/**
 * The nearest living relatives of a tip on both sides, the nearer first: those that hang on the first fork above it which has
 * any, and those on the next. Fewer than two where the tree holds no more; then nothing brackets the tip.
 */
export function livingSides(tree: Tree, tip: number, isLiving: (tip: number) => boolean): LivingSide[] {
  const sides: LivingSide[] = [];
  let from = tip;
  for (let fork = tree.parent[tip]!; fork !== -1 && sides.length < 2; fork = tree.parent[fork]!) {
    const own = from;
    const tips = childrenOf(tree, fork).flatMap((child) =>
      child === own ? [] : tipsUnder(tree, child).filter(isLiving),
    );
    if (tips.length > 0) sides.push({ fork, tips });
    from = fork;
  }
  return sides;
}

function tipsUnder(tree: Tree, node: number): number[] {
  const found: number[] = [];
  const open = [node];
  for (let next = open.pop(); next !== undefined; next = open.pop())
    if (isTip(tree, next)) found.push(next);
    else open.push(...childrenOf(tree, next));
  return found.sort((a, b) => a - b);
}
