import { bracketData } from '../figures/bracket-tree/bracket-data.ts';
import type { LineageView } from '../lineage/view.ts';
import { lineagePhotographs } from '../photographs/photographs.ts';
import { findSliceBlock } from '../slice/compose-block.ts';
import { partNames, type PartName } from './address.ts';

/** Whether the records of a lineage give a part anything to show. */
const isThere: Record<PartName, (view: LineageView) => boolean> = {
  slice: (view) => findSliceBlock(view) !== undefined,
  relatives: (view) => bracketData(view, '') !== undefined,
  change: ({ lineage }) => lineage.traits.some(({ trend }) => trend),
  pictures: (view) => lineagePhotographs(view).length > 0,
};

/** The parts that a lineage has. */
export function partsOf(view: LineageView): PartName[] {
  return partNames.filter((part) => isThere[part](view));
}
