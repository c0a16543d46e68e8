import { lineageView, type LineageView } from './view.ts';

/** What story components need of the page that they stand on; handed over in `Astro.locals`. */
export interface PageContext {
  view: LineageView;
  /** Steps of the story, and how many have been rendered so far. */
  steps: { total: number; rendered: number };
  /** How many trade words have been explained so far, so that each has an id of its own. */
  terms: number;
}

/** The page of a story component. Throws when it stands outside a lineage's page. */
export function requirePage(locals: App.Locals): PageContext {
  if (!locals.page) throw new Error('story components only work on the page of a lineage');
  return locals.page;
}

/** The page's view of a trait; without one, of the trait that the page opens with. */
export function viewOf({ view }: PageContext, trait: string | undefined): LineageView {
  return trait === undefined || trait === view.trait.id
    ? view
    : lineageView(view.lineage, view.language, trait);
}
