import type { SmallSkulls } from '../figures/scene/small-skulls.ts';
import { drawingsOf, smallSkullAddress } from '../figures/skull-figures.ts';
import { findSmallSkullBox } from '../slice/small-skull-box.ts';
import { focusTaxa } from './focus.ts';
import type { StoryPlan } from './story-plan.ts';
import type { LineageView } from './view.ts';

/**
 * Small pictures for the plate, dearest first: the animal that the page opens with, then the first of every step, then whom
 * else the steps name; without steps all that are drawn, in the order of the records. Undefined without a drawing.
 */
export function findSmallSkulls(view: LineageView, plan: StoryPlan): SmallSkulls | undefined {
  const drawn = drawingsOf(view).map(({ taxon }) => taxon);
  const box = findSmallSkullBox(view);
  if (!box) return undefined;
  const tree = view.lineage.trees.find(({ reference }) => reference);
  const steps = plan.focus.map((focus) => focusTaxa(focus, tree));
  const named = [plan.first, ...steps.flatMap(([first]) => first ?? []), ...steps.flat()];
  const order = plan.steps > 0 ? named : [plan.first, ...drawn];
  return {
    aspect: box.width / box.height,
    pictures: [...new Set(order)]
      .filter((taxon) => drawn.includes(taxon))
      .map((taxon) => ({ taxon, href: smallSkullAddress(view, taxon) })),
  };
}
