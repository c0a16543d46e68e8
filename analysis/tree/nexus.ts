import { nameOf, readNewick } from './newick.ts';
import type { Tree } from './tree.ts';
import { TreeTextError } from './tree-text-error.ts';
import { TreeTokens, type TreeToken } from './tree-tokens.ts';

/** One tree of a NEXUS file. */
export interface NamedTree {
  readonly name: string;
  readonly tree: Tree;
  /** Marked with an asterisk, the standard's sign for the default tree of the block. */
  readonly preferred: boolean;
}

/**
 * Trees of the TREES blocks of a NEXUS text (Maddison, Swofford and Maddison 1997, Systematic Biology 46: 590–621),
 * names translated by the block's table; other blocks are passed over. Throws TreeTextError with the place.
 */
export function parseNexusTrees(text: string, options: { underscores?: 'keep' | 'space' } = {}): NamedTree[] {
  const tokens = new TreeTokens(text);
  const opening = tokens.next();
  if (!isWord(opening, '#nexus'))
    throw new TreeTextError(text, opening.offset, 'a NEXUS text starts with "#NEXUS"');
  const trees: NamedTree[] = [];
  for (let token = tokens.next(); token.kind !== 'end'; token = tokens.next()) {
    if (!isWord(token, 'begin')) continue;
    const block = tokens.next();
    if (isWord(block, 'trees')) readBlock(tokens, block, options.underscores ?? 'keep', trees);
  }
  if (trees.length === 0) throw new TreeTextError(text, opening.offset, 'no tree in a TREES block');
  return trees;
}

function readBlock(
  tokens: TreeTokens,
  block: TreeToken,
  underscores: 'keep' | 'space',
  trees: NamedTree[],
): void {
  requireMark(tokens, ';');
  let names = new Map<string, string>();
  for (let token = tokens.next(); ; token = tokens.next()) {
    if (token.kind === 'end')
      throw new TreeTextError(tokens.text, block.offset, 'TREES block is never closed: expected "end;"');
    if (isWord(token, 'end') || isWord(token, 'endblock')) return requireMark(tokens, ';');
    if (isWord(token, 'translate')) names = readTranslation(tokens, underscores);
    else if (isWord(token, 'tree') || isWord(token, 'utree'))
      trees.push(readTree(tokens, names, underscores));
    else passCommand(tokens);
  }
}

function readTree(
  tokens: TreeTokens,
  names: ReadonlyMap<string, string>,
  underscores: 'keep' | 'space',
): NamedTree {
  let name = tokens.next();
  let preferred = false;
  if (name.text.startsWith('*')) {
    preferred = true;
    name = name.text === '*' ? tokens.next() : { ...name, text: name.text.slice(1) };
  }
  if (name.kind !== 'word' && name.kind !== 'quoted')
    throw new TreeTextError(tokens.text, name.offset, `a tree needs a name, got "${name.text}"`);
  requireMark(tokens, '=');
  const written = readNewick(tokens, underscores);
  const label = written.label.map((word) => names.get(word) ?? word);
  return { name: name.text, tree: { ...written, label }, preferred };
}

function readTranslation(tokens: TreeTokens, underscores: 'keep' | 'space'): Map<string, string> {
  const names = new Map<string, string>();
  for (;;) {
    const key = tokens.next();
    const name = key.kind === 'mark' || key.kind === 'end' ? key : tokens.next();
    if (name.kind === 'mark' || name.kind === 'end')
      throw new TreeTextError(tokens.text, name.offset, 'translate table: expected a key and a name');
    if (names.has(key.text))
      throw new TreeTextError(tokens.text, key.offset, `translate table: "${key.text}" stands twice`);
    names.set(nameOf(key, underscores), nameOf(name, underscores));
    const mark = tokens.next();
    if (mark.text === ';') return names;
    if (mark.text !== ',')
      throw new TreeTextError(tokens.text, mark.offset, `unexpected "${mark.text}": expected "," or ";"`);
    if (tokens.peek().text === ';') {
      tokens.next();
      return names;
    }
  }
}

function passCommand(tokens: TreeTokens): void {
  for (let token = tokens.next(); token.kind !== 'end'; token = tokens.next()) if (token.text === ';') return;
}

function requireMark(tokens: TreeTokens, mark: string): void {
  const token = tokens.next();
  if (token.kind !== 'mark' || token.text !== mark)
    throw new TreeTextError(tokens.text, token.offset, `unexpected "${token.text}": expected "${mark}"`);
}

function isWord(token: TreeToken, word: string): boolean {
  return token.kind === 'word' && token.text.toLowerCase() === word;
}
