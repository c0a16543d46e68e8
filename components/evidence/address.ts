import { pageAddress } from '../lineage/page-address.ts';
import type { LineageView } from '../lineage/view.ts';
import { partAddress } from '../parts/address.ts';
import { changeId } from '../trend/address.ts';

/** More animals than this, and each card is a page of its own, which the explainer fetches when it opens. */
export const mostOnOnePage = 60;

/** The id of an evidence card on its page: one address for each taxon and trait. */
export function evidenceId(taxon: string, trait: string): string {
  return `evidence-${trait}-${taxon}`;
}

/** Whether the cards of a view are pages of their own. */
export function areCardsApart({ trait }: LineageView): boolean {
  return trait.values.length > mostOnOnePage;
}

/** Where the cards of a view stand that are pages of their own: `/reed-trunks/evidence/`. */
export function cardsFolder({ lineage, language }: LineageView): string {
  return pageAddress(lineage, language, 'evidence');
}

/** The address of the evidence behind a value, as links of the page have it. */
export function evidenceAddress(view: LineageView, taxon: string): string {
  const id = evidenceId(taxon, view.trait.id);
  if (areCardsApart(view)) return `${cardsFolder(view)}${taxon}/#${id}`;
  return `${view.isApart ? pageAddress(view.lineage, view.language) : ''}#${id}`;
}

/** The address of what may be said of a trait's change. */
export function changeAddress(view: LineageView): string {
  return partAddress(view, 'change', changeId(view.trait.id));
}
