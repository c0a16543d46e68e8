import { childrenOf, isTip, rootOf, type Tree } from './tree.ts';

const plain = /^[^\s()[\]{}/\\,;:=*'"`+<>]+$/;

/** Newick text of a tree with the names and branch lengths that it has, on one line; iterative. */
export function writeNewick(tree: Tree): string {
  const root = rootOf(tree);
  const text = new Array<string>(tree.parent.length).fill('');
  for (let node = 0; node <= root; node++) {
    const inner = isTip(tree, node)
      ? ''
      : `(${childrenOf(tree, node)
          .map((child) => text[child])
          .join(',')})`;
    const length = tree.branchLength[node]!;
    text[node] = inner + quote(tree.label[node]!) + (Number.isNaN(length) ? '' : `:${length}`);
  }
  return `${text[root]};`;
}

function quote(label: string): string {
  return label === '' || plain.test(label) ? label : `'${label.replaceAll("'", "''")}'`;
}
