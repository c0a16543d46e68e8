import type { LineageView } from '../lineage/view.ts';
import { drawingsOf, skullDrawing } from './skull-figures.ts';
import { isFragment } from './skull-found.ts';
import { inkMarkup, ownMarkup } from './skull-markup.ts';
import type { SkullLayer } from './skull/skull-svg.ts';

/**
 * Style of pictures that hold small skulls. What is restored stays to be seen where an image stands on a dark page, since
 * images follow the colour scheme of theirs, and bone is lit warmly there; of a fragment it is not shown at all.
 */
export const smallSkullStyle =
  '<style>@media (prefers-color-scheme:dark){.skull-ruling,.skull-dash,.skull-dash-thin{stroke:#b9c4bf}path.skull-bone{fill:#f6e7c6}.skull-tooth{fill:#f6efe1}}.fragment :is(.skull-restored,.skull-accent-ruling,.skull-accent-rim-dashed,.skull-accent-close){display:none}</style>';

/** Layers of one skull, all unless told otherwise, in heavier ink for small pictures, in the drawing frame; empty for an animal without a drawing. */
export async function smallSkull(
  view: LineageView,
  taxon: string,
  layers?: readonly SkullLayer[],
): Promise<string> {
  const found = drawingsOf(view).find((drawing) => drawing.taxon === taxon);
  const skull = found && skullDrawing(found, view);
  if (!skull) return '';
  const markup = found.own ? ownMarkup(found.own, layers) : await inkMarkup(skull, 'mini', layers);
  return isFragment(view, found) ? `<g class="fragment">${markup}</g>` : markup;
}
