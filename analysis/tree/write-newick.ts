import { isTip, rootOf, type Tree } from './tree.ts';

const plain = /^[^\s()[\]{}/\\,;:=*'"`+<>]+$/;

/**
 * Newick text of a tree with the names and branch lengths that it has, on one line: names that the format would misread in
 * quotes, no length where none is known. Iterative, so depth does not matter; a lone tip gives its name.
 */
export function writeNewick(tree: Tree): string {
  const pieces: string[] = [];
  let node = rootOf(tree);
  for (;;) {
    while (!isTip(tree, node)) {
      pieces.push('(');
      node = tree.firstChild[node]!;
    }
    pieces.push(nameAndLength(tree, node));
    while (tree.nextSibling[node] === -1 && tree.parent[node] !== -1) {
      node = tree.parent[node]!;
      pieces.push(')', nameAndLength(tree, node));
    }
    if (tree.parent[node] === -1) return `${pieces.join('')};`;
    pieces.push(',');
    node = tree.nextSibling[node]!;
  }
}

function nameAndLength(tree: Tree, node: number): string {
  const label = tree.label[node]!;
  const length = tree.branchLength[node]!;
  const name = label === '' || plain.test(label) ? label : `'${label.replaceAll("'", "''")}'`;
  return Number.isNaN(length) ? name : `${name}:${length}`;
}
