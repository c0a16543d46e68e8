import { parseNewick, parseNexusTrees, TreeTextError, type Tree } from '../../../analysis/tree/index.ts';
import { didYouMean } from '../findings/suggest.ts';
import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import type { AuthoredLineage, AuthoredTree } from '../schema/index.ts';
import { checkDating } from './dating-record.ts';
import { sourceText, type SourceText, type Span } from '../source/source-text.ts';
import type { Located } from '../source/yaml-source.ts';

/** One authored tree with its topology; tips still carry the names as written. */
export interface ParsedTree {
  authored: AuthoredTree;
  index: number;
  tree: Tree;
  /** The entry in lineage.yaml. */
  span: Span;
  /** The file that the tree itself is written in. */
  source: SourceText;
  /** Where a tip is written. */
  tipSpan(label: string, occurrence?: number): Span;
}

/** Parses every tree of a lineage; a mistake is reported at its line and column and that tree is left out. */
export function parseTrees(records: LineageRecords, report: Report): ParsedTree[] {
  const { lineage } = records;
  if (!lineage) return [];
  checkChoice(lineage, report);
  checkDating(lineage, report);
  return lineage.value.trees.flatMap((authored, index) => {
    const text = treeText(records, lineage, authored, index, report);
    const tree = text && parseText(text, authored, report);
    if (!tree) return [];
    const span = lineage.at(['trees', index, 'id']);
    return [
      {
        authored,
        index,
        tree,
        span,
        source: text.source,
        tipSpan: (label, occurrence = 0) => labelSpan(text, label, occurrence),
      },
    ];
  });
}

/** The text of a tree and where it begins in the file that holds it. */
interface TreeText {
  text: string;
  source: SourceText;
  offset: number;
  /** False where line breaks of the file are folded, so that places inside are not known. */
  exact: boolean;
  nexus: boolean;
  whole: Span;
}

function treeText(
  records: LineageRecords,
  lineage: Located<AuthoredLineage>,
  authored: AuthoredTree,
  index: number,
  report: Report,
): TreeText | undefined {
  const { newick, file } = authored;
  if ((newick === undefined) === (file === undefined)) {
    const both = newick !== undefined;
    report.add(
      'tree-choice',
      lineage.at(['trees', index, 'id']),
      `the tree "${authored.id}" ${both ? 'is given twice, as newick and as file' : 'has neither newick nor file'}`,
      'give one of the two',
    );
    return undefined;
  }
  if (newick !== undefined) return inlineTree(lineage, newick, index);
  const source = records.treeFiles.get(file!.normalize('NFC'));
  if (!source) {
    if (records.folder.files.includes(file!)) {
      report.add(
        'tree-choice',
        lineage.at(['trees', index, 'file']),
        `"${file}" is not known as a file of trees`,
        'let its name end in .nwk, .newick, .nex, .nexus, .tre or .trees',
      );
    }
    return undefined;
  }
  return {
    text: source.text,
    source,
    offset: 0,
    exact: true,
    nexus: /^\s*#nexus/i.test(source.text),
    whole: { source, start: 0, end: 1 },
  };
}

function inlineTree(lineage: Located<AuthoredLineage>, newick: string, index: number): TreeText {
  const path = ['trees', index, 'newick'];
  const whole = lineage.at(path);
  const written = lineage.writtenAt(path) ?? '';
  const quote = /^["']/.test(written) ? 1 : 0;
  const exact = written.slice(quote, written.length - quote) === newick;
  return { text: newick, source: whole.source, offset: whole.start + quote, exact, nexus: false, whole };
}

function parseText(text: TreeText, authored: AuthoredTree, report: Report): Tree | undefined {
  try {
    return text.nexus ? chooseTree(text, authored, report) : parseNewick(text.text, { underscores: 'space' });
  } catch (error) {
    if (!(error instanceof TreeTextError)) throw error;
    report.add(
      'tree-syntax',
      placeIn(text, error),
      `the tree "${authored.id}" cannot be read: ${error.reason}`,
      'a tree reads ((one,other),third); with a semicolon at its end',
    );
    return undefined;
  }
}

function chooseTree(text: TreeText, authored: AuthoredTree, report: Report): Tree | undefined {
  const trees = parseNexusTrees(text.text, { underscores: 'space' });
  const names = trees.map((tree) => tree.name);
  if (authored.name !== undefined) {
    const named = trees.find((tree) => tree.name === authored.name);
    if (!named)
      report.add(
        'tree-choice',
        text.whole,
        `no tree is called "${authored.name}"${didYouMean(authored.name, names)}`,
        `the file has ${names.join(', ') || 'no trees'}`,
      );
    return named?.tree;
  }
  const chosen = trees.find((tree) => tree.preferred) ?? (trees.length === 1 ? trees[0] : undefined);
  if (!chosen) {
    const problem =
      trees.length === 0
        ? 'the file holds no tree'
        : `the file holds ${trees.length} trees, and none is marked with *`;
    report.add(
      'tree-choice',
      text.whole,
      problem,
      trees.length === 0 ? 'give it a TREES block' : `name one in lineage.yaml, such as name: ${names[0]}`,
    );
  }
  return chosen?.tree;
}

function placeIn({ text, source, offset, exact, whole }: TreeText, error: TreeTextError): Span {
  if (!exact) return whole;
  const local = sourceText('', text);
  const start = offset + (local.lineStarts[error.line - 1] ?? 0) + error.column - 1;
  return { source, start, end: start + 1 };
}

function labelSpan(
  { text, source, offset, exact, whole }: TreeText,
  label: string,
  occurrence: number,
): Span {
  if (!exact) return whole;
  const escaped = label.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&').replaceAll(' ', '[ _]');
  const pattern = new RegExp(`(?<![\\w-])${escaped}(?![\\w-])`, 'g');
  let match = pattern.exec(text);
  for (let passed = 0; match && passed < occurrence; passed++) match = pattern.exec(text) ?? match;
  if (!match) return whole;
  return { source, start: offset + match.index, end: offset + match.index + match[0].length };
}

function checkChoice(lineage: Located<AuthoredLineage>, report: Report): void {
  const { trees } = lineage.value;
  const preferred = trees.flatMap((tree, index) => (tree.prefer === true ? [index] : []));
  for (const index of preferred.slice(1)) {
    report.add(
      'tree-choice',
      lineage.at(['trees', index, 'prefer']),
      'two trees are preferred',
      'keep prefer: true on the one whose numbers are printed',
    );
  }
  const seen = new Set<string>();
  trees.forEach(({ id }, index) => {
    if (seen.has(id))
      report.add(
        'duplicate-id',
        lineage.at(['trees', index, 'id']),
        `the id "${id}" is given twice in trees`,
        'give one of the two another id',
      );
    seen.add(id);
  });
}
