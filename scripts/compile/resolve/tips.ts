import { isTip, tipsOf, type Tree } from '../../../analysis/tree/index.ts';
import { didYouMean } from '../findings/suggest.ts';
import type { Report } from '../findings/report.ts';
import type { FindingCode } from '../findings/codes.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import { wholeFile, type Span } from '../source/source-text.ts';
import type { ParsedTree } from './trees.ts';

/** A tree whose tips carry taxon ids. */
export interface NamedTipsTree extends ParsedTree {
  taxa: Set<string>;
}

/**
 * Names the tips of each tree by taxon id; a tip may be written as the id or as the scientific name. A tip that is no
 * taxon, or that stands twice, is reported and its tree left out; a taxon that is in no tree is a warning.
 */
export function nameTips(
  trees: readonly ParsedTree[],
  records: LineageRecords,
  report: Report,
): NamedTipsTree[] {
  if (!records.taxa.whole) return [];
  const ids = new Map<string, string>();
  for (const { value } of records.taxa.records) ids.set(value.scientificName, value.id);
  for (const id of records.taxa.declared.keys()) ids.set(id, id);
  const named = trees.flatMap((parsed) => nameTree(parsed, ids, report) ?? []);
  if (trees.length > 0 && named.length === trees.length) warnOfAbsent(named, records, report);
  return named;
}

function nameTree(
  parsed: ParsedTree,
  ids: ReadonlyMap<string, string>,
  report: Report,
): NamedTipsTree | undefined {
  const taxa = new Set<string>();
  const twice = new Set<string>();
  const label = [...parsed.tree.label];
  let good = true;
  for (const tip of tipsOf(parsed.tree)) {
    const written = label[tip]!;
    const id = ids.get(written);
    if (id === undefined) unknownTip(parsed, written, ids, report);
    else if (taxa.has(id) && !twice.has(id)) {
      twice.add(id);
      report.add(
        'tip-twice',
        placeOf(parsed, written, 1, 'tip-twice', report),
        `"${id}" stands at two tips of the tree "${parsed.authored.id}"`,
        'keep one of them',
      );
    }
    good &&= id !== undefined && !taxa.has(id);
    if (id !== undefined) {
      taxa.add(id);
      label[tip] = id;
    }
  }
  if (taxa.size < 2 && good) {
    report.add(
      'tree-shape',
      parsed.span,
      `the tree "${parsed.authored.id}" has ${taxa.size === 1 ? 'one tip' : 'no tips'}`,
      'a tree relates two taxa at least',
    );
    good = false;
  }
  return good
    ? { ...parsed, tree: { ...parsed.tree, label: withoutForkNames(parsed.tree, label) }, taxa }
    : undefined;
}

function unknownTip(
  parsed: ParsedTree,
  written: string,
  ids: ReadonlyMap<string, string>,
  report: Report,
): void {
  const { id } = parsed.authored;
  if (written === '') {
    report.add(
      'tip-without-taxon',
      parsed.span,
      `a tip of the tree "${id}" has no name`,
      'name every tip by a taxon id',
    );
    return;
  }
  const message = () =>
    `the tip "${written}" of the tree "${id}" is no taxon${didYouMean(written, ids.keys())}`;
  report.add(
    'tip-without-taxon',
    placeOf(parsed, written, 0, 'tip-without-taxon', report),
    message,
    'name tips by ids of taxa.yaml, or add the taxon there',
  );
}

/** Where a tip is written; looking for it in a long tree takes time that is spent only on findings that are shown. */
function placeOf(
  parsed: ParsedTree,
  written: string,
  occurrence: number,
  code: FindingCode,
  report: Report,
): Span {
  return report.isFull(code, parsed.source) ? wholeFile(parsed.source) : parsed.tipSpan(written, occurrence);
}

/** Names of forks are the author's own; they must never be taken for tips. */
function withoutForkNames(tree: Tree, label: readonly string[]): string[] {
  return label.map((name, node) => (isTip(tree, node) ? name : ''));
}

function warnOfAbsent(trees: readonly NamedTipsTree[], records: LineageRecords, report: Report): void {
  for (const { value, at } of records.taxa.records) {
    if (trees.some(({ taxa }) => taxa.has(value.id))) continue;
    report.add(
      'taxon-in-no-tree',
      at(['id']),
      `"${value.id}" is in no tree`,
      'it is shown with what was measured and plays no part in estimates; add it to a tree if it should',
    );
  }
}
