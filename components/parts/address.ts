import { pageAddress } from '../lineage/page-address.ts';
import type { StoryPlan } from '../lineage/story-plan.ts';
import type { LineageView } from '../lineage/view.ts';

/** Sections of the explainer that are pages of their own, in the order in which it shows them. */
export const partNames = ['slice', 'relatives', 'change', 'pictures'] as const;
export type PartName = (typeof partNames)[number];

/** A part of a page, and what the page knows that the part shows. */
export interface PartOfPage {
  readonly view: LineageView;
  readonly part: PartName;
  readonly plan: StoryPlan;
}

/** The address of a part, or of a place in it: `/reed-trunks/parts/change/#change-nasal-position`. */
export function partAddress({ lineage, language }: LineageView, part: PartName, place = ''): string {
  return `${pageAddress(lineage, language, 'parts', part)}${place && `#${place}`}`;
}
