/**
 * A rooted tree in flat arrays: every child comes before its parent and the root is last, so one loop up the
 * indices is a pass from tips to root and one loop down is a pass from root to tips.
 */
export interface Tree {
  /** Index of the parent; −1 for the root. */
  readonly parent: Int32Array;
  /** Branch to the parent as written; NaN where none was written. */
  readonly branchLength: Float64Array;
  /** Name as written, '' where none was. */
  readonly label: readonly string[];
  /** First child, −1 for a tip; the others follow by `nextSibling`. */
  readonly firstChild: Int32Array;
  /** Next child of the same parent, −1 after the last. */
  readonly nextSibling: Int32Array;
}

/** A tree in time: `branchLength` is in million years and every node has an age. */
export interface DatedTree extends Tree {
  readonly ageMa: Float64Array;
}

/** Builds a tree from parents (children before parents, root last), branch lengths and labels. */
export function buildTree(parent: Int32Array, branchLength: Float64Array, label: readonly string[]): Tree {
  const count = parent.length;
  if (count === 0 || parent[count - 1] !== -1) throw new Error('a tree needs a root, as its last node');
  const firstChild = new Int32Array(count).fill(-1);
  const nextSibling = new Int32Array(count).fill(-1);
  for (let node = count - 2; node >= 0; node--) {
    const above = parent[node]!;
    if (above <= node || above >= count)
      throw new Error(`node ${node} must come before its parent, got ${above}`);
    nextSibling[node] = firstChild[above]!;
    firstChild[above] = node;
  }
  return { parent, branchLength, label, firstChild, nextSibling };
}

/** Index of the root. */
export function rootOf(tree: Tree): number {
  return tree.parent.length - 1;
}

/** Whether a node has no children. */
export function isTip(tree: Tree, node: number): boolean {
  return tree.firstChild[node] === -1;
}

/** Indices of the tips, in the order written. */
export function tipsOf(tree: Tree): number[] {
  const tips: number[] = [];
  for (let node = 0; node < tree.parent.length; node++) if (isTip(tree, node)) tips.push(node);
  return tips;
}

/** Children of a node, in the order written; none for a tip. */
export function childrenOf(tree: Tree, node: number): number[] {
  const children: number[] = [];
  for (let child = tree.firstChild[node]!; child !== -1; child = tree.nextSibling[child]!)
    children.push(child);
  return children;
}

/** Tips already found, by the tree's topology and its names: a span dates the same tree a thousand times. */
const foundTips = new WeakMap<
  Int32Array,
  { readonly label: Tree['label']; readonly tips: ReadonlyMap<string, number> }
>();

/** Tip of each label. Throws where a tip has no label or two tips share one, naming it. */
export function requireTipsByLabel(tree: Tree): ReadonlyMap<string, number> {
  const found = foundTips.get(tree.firstChild);
  if (found?.label === tree.label) return found.tips;
  const tips = new Map<string, number>();
  for (const tip of tipsOf(tree)) {
    const label = tree.label[tip]!;
    if (label === '') throw new Error('a tip has no name');
    if (tips.has(label)) throw new Error(`two tips are named "${label}"`);
    tips.set(label, tip);
  }
  foundTips.set(tree.firstChild, { label: tree.label, tips });
  return tips;
}
