import {
  dateTree,
  findMisplacedTips,
  type DatedTree,
  type Dating,
  type Tree,
} from '../../../analysis/tree/index.ts';
import type { Report } from '../findings/report.ts';
import { datingRecord } from '../resolve/dating-record.ts';
import type { NamedTipsTree } from '../resolve/tips.ts';
import type { AuthoredTree } from '../schema/index.ts';
import type { TaxonAges } from './taxon-ages.ts';

/** A tree in time, with how it was dated. */
export interface DatedLineageTree {
  id: string;
  authored: AuthoredTree;
  topology: Tree;
  dated: DatedTree;
  dating: Dating;
  reference: boolean;
  taxa: ReadonlySet<string>;
}

/** Dates every tree by its rule; one that cannot be dated is reported and left out. */
function dateTrees(
  trees: readonly NamedTipsTree[],
  placedMa: ReadonlyMap<string, number>,
  ages: ReadonlyMap<string, TaxonAges>,
  report: Report,
): DatedLineageTree[] {
  const preferred = trees.find(({ authored }) => authored.prefer === true) ?? trees[0];
  return trees.flatMap((tree) => {
    const dating = datingOf(tree.authored);
    const dated = tryDating(tree, dating, placedMa, report);
    if (!dated) return [];
    if (dating.rule === 'given') checkGiven(tree, dated, ages, report);
    return [
      {
        id: tree.authored.id,
        authored: tree.authored,
        topology: tree.tree,
        dated,
        dating,
        reference: tree === preferred,
        taxa: tree.taxa,
      },
    ];
  });
}

/**
 * A dater of the same trees for the tips of one trait after another. Traits whose tips stand at the same ages share their
 * trees, so that equal questions of the engine stay equal.
 */
export function treeDater(
  trees: readonly NamedTipsTree[],
  ages: ReadonlyMap<string, TaxonAges>,
  report: Report,
): (placedMa: ReadonlyMap<string, number>) => DatedLineageTree[] {
  const known = new Map<string, DatedLineageTree[]>();
  return (placedMa) => {
    const key = JSON.stringify([...placedMa]);
    const dated = known.get(key) ?? dateTrees(trees, placedMa, ages, report);
    known.set(key, dated);
    return dated;
  };
}

function datingOf(authored: AuthoredTree): Dating {
  const given = datingRecord(authored);
  if (given.method === 'given') return { rule: 'given', rootAgeMa: given.root };
  // What a method needs is checked where the tree is read.
  if (given.method === 'minimum-branch')
    return { rule: 'minimum-branch', minimumMa: given.minimumBranch!, rootAgeMa: given.root };
  return { rule: 'equal-share', rootAgeMa: given.root! };
}

function tryDating(
  tree: NamedTipsTree,
  dating: Dating,
  placedMa: ReadonlyMap<string, number>,
  report: Report,
): DatedTree | undefined {
  // A tip without an age is told at its taxon.
  if ([...tree.taxa].some((taxon) => !placedMa.has(taxon))) return undefined;
  try {
    return dateTree(tree.tree, dating, placedMa);
  } catch (error) {
    // The engine refuses with plain errors; any other kind is a mistake of the program and must not pass for a finding.
    if (!(error instanceof Error) || error.constructor !== Error) throw error;
    report.add(
      'tree-age',
      tree.span,
      `the tree "${tree.authored.id}" cannot be dated: ${error.message}`,
      'correct the root age, the branch lengths, or the ages of the finds',
    );
    return undefined;
  }
}

function checkGiven(
  tree: NamedTipsTree,
  dated: DatedTree,
  ages: ReadonlyMap<string, TaxonAges>,
  report: Report,
): void {
  const recorded = new Map(
    [...ages].flatMap(([id, { age }]) => (age ? [[id, { from: age.from, to: age.to }] as const] : [])),
  );
  for (const { label, treeMa, fromMa, toMa } of findMisplacedTips(dated, recorded)) {
    report.add(
      'tree-age',
      tree.tipSpan(label),
      `"${label}" stands at ${Number(treeMa.toFixed(4))} Ma on the tree "${tree.authored.id}", and its finds are ${fromMa}–${toMa} Ma`,
      'correct the branch lengths, or date the tree by another method',
    );
  }
}
