import type { LineageView } from '../../lineage/view.ts';
import { plateData, type ChartUnit, type PlateTaxon } from '../scene/plate-data.ts';
import { changesByNode, type ChangesByNode } from './changes.ts';
import { kinOf, tipsOf, type DatedKin } from './kin.ts';
import { turnToMiddle } from './turn.ts';

/** One animal at the end of its line. */
export interface BracketTip {
  id: string;
  name: string;
  /** What is known of it in the trait in view; absent for an animal without an age or an entry. */
  known?: PlateTaxon;
  printed: string;
}

/** What a bracket tree shows: relatives in an order to start from, and the animals by id. */
export interface BracketData {
  kin: DatedKin;
  tips: ReadonlyMap<string, BracketTip>;
  epochs: readonly ChartUnit[];
  oldestMa: number;
  /** Characters that change on the line that leads to an animal or a fork. */
  changes: ChangesByNode;
}

/**
 * The reference tree of a lineage for one trait. `focal` is turned towards the middle of the order, so that no animal reads
 * as the end of a row. Undefined where the lineage has no tree.
 */
export function bracketData(view: LineageView, focal: string): BracketData | undefined {
  const tree = view.lineage.trees.find((each) => each.reference);
  const kin = tree && kinOf(tree);
  if (!kin) return undefined;
  const { taxa, epochs } = plateData(view.lineage, view.trait, view.language);
  const known = new Map(taxa.map((taxon) => [taxon.id, taxon]));
  const named = new Map(view.lineage.taxa.map((taxon) => [taxon.id, taxon.name]));
  const root = turnToMiddle(kin.root, focal);
  const tips = tipsOf(root).map((id): BracketTip => {
    const taxon = known.get(id);
    return {
      id,
      name: named.get(id) ?? id,
      ...(taxon && { known: taxon }),
      printed: view.findValue(id) ? view.printed(id).printed : '',
    };
  });
  return {
    kin: { root, agesMa: kin.agesMa },
    tips: new Map(tips.map((tip) => [tip.id, tip])),
    epochs,
    changes: changesByNode(view.lineage),
    oldestMa: Math.max(
      ...kin.agesMa.values(),
      ...taxa.filter(({ id }) => kin.agesMa.has(id)).map((t) => t.firstMa),
    ),
  };
}
