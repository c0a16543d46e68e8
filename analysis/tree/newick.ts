import { buildTree, type Tree } from './tree.ts';
import { TreeTextError } from './tree-text-error.ts';
import { TreeTokens, type TreeToken } from './tree-tokens.ts';

const number = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/;

/**
 * Tree of one Newick text: quoted names, underscores as spaces in unquoted ones when `underscores` is 'space',
 * comments, branch lengths, polytomies. Iterative, so depth does not matter. Throws TreeTextError with the place.
 */
export function parseNewick(text: string, options: { underscores?: 'keep' | 'space' } = {}): Tree {
  const tokens = new TreeTokens(text);
  const tree = readNewick(tokens, options.underscores ?? 'keep');
  const rest = tokens.next();
  if (rest.kind !== 'end')
    throw new TreeTextError(text, rest.offset, `unexpected "${rest.text}" after the tree's ";"`);
  return tree;
}

/** Reads one tree, up to and with its semicolon, from tokens. */
export function readNewick(tokens: TreeTokens, underscores: 'keep' | 'space'): Tree {
  const parent: number[] = [];
  const branchLength: number[] = [];
  const label: string[] = [];
  const open: { readonly offset: number; readonly children: number[] }[] = [];
  const fail = (token: TreeToken, expected: string): never => {
    const found = token.kind === 'end' ? 'the text ends' : `unexpected "${token.text}"`;
    throw new TreeTextError(tokens.text, token.offset, `${found}: expected ${expected}`);
  };
  const closeNode = (children: readonly number[]): number => {
    const node = parent.push(-1) - 1;
    for (const child of children) parent[child] = node;
    label.push(readName(tokens, underscores));
    branchLength.push(readLength(tokens));
    return node;
  };
  for (;;) {
    while (isMark(tokens.peek(), '(')) open.push({ offset: tokens.next().offset, children: [] });
    const first = tokens.peek();
    let node = closeNode([]);
    if (label[node] === '') fail(first, 'a name or "("');
    for (;;) {
      const token = tokens.next();
      const group = open.at(-1);
      if (!group) {
        if (!isMark(token, ';')) fail(token, '";"');
        return buildTree(Int32Array.from(parent), Float64Array.from(branchLength), label);
      }
      group.children.push(node);
      if (isMark(token, ',')) break;
      if (!isMark(token, ')')) {
        if (token.kind === 'end' || isMark(token, ';'))
          throw new TreeTextError(tokens.text, group.offset, '"(" is never closed');
        fail(token, '"," or ")"');
      }
      open.pop();
      node = closeNode(group.children);
    }
  }
}

function isMark(token: TreeToken, mark: string): boolean {
  return token.kind === 'mark' && token.text === mark;
}

function readName(tokens: TreeTokens, underscores: 'keep' | 'space'): string {
  const token = tokens.peek();
  if (token.kind !== 'word' && token.kind !== 'quoted') return '';
  return nameOf(tokens.next(), underscores);
}

/** Name that a token stands for: an underscore is a space only in unquoted names, and only when asked for. */
export function nameOf(token: TreeToken, underscores: 'keep' | 'space'): string {
  return token.kind === 'word' && underscores === 'space' ? token.text.replaceAll('_', ' ') : token.text;
}

function readLength(tokens: TreeTokens): number {
  if (!isMark(tokens.peek(), ':')) return NaN;
  tokens.next();
  const token = tokens.next();
  if (token.kind !== 'word' || !number.test(token.text))
    throw new TreeTextError(tokens.text, token.offset, `branch length must be a number, got "${token.text}"`);
  return Number(token.text);
}
