import { coordinate as c } from '../figures/scene/scene.ts';
import { rasterise } from '../figures/skull/raster.ts';
import { boxedSvg, type SkullLayer } from '../figures/skull/skull-svg.ts';
import { smallSkull, smallSkullStyle } from '../figures/small-skull.ts';
import type { LineageView } from '../lineage/view.ts';
import type { Series } from './compose-series.ts';

/** Colour of the thin lines from skulls to the axis: it is read on paper and at night. */
const leaderColour = '#8a7d6c';

/** Width of the picture of bone on a plain screen, and on a fine one. */
export const [seriesWidthPx, fineSeriesWidthPx] = [1240, 2480];

/**
 * The bone of a series and the lines behind it as a WebP picture on a clear ground: to read and draw the lines of two dozen
 * skulls would hold up a scroll.
 */
export async function seriesRaster(view: LineageView, series: Series, widthPx: number): Promise<Buffer> {
  const bone = await skullsMarkup(view, series, ['bone']);
  return rasterise(boxed(series, leaders(series) + bone, widthPx));
}

/** What lies over the picture of bone, as an image of its own: what is restored, torn edges, and the anatomy of the trait. */
export async function seriesOverlay(view: LineageView, series: Series): Promise<string> {
  const over = await skullsMarkup(view, series, ['restored', 'torn', 'accent']);
  return boxed(series, smallSkullStyle + over);
}

/** The whole of a series in lines, for paper. */
export async function seriesPrint(view: LineageView, series: Series): Promise<string> {
  return boxed(series, smallSkullStyle + leaders(series) + (await skullsMarkup(view, series)));
}

function boxed({ width, height }: Series, markup: string, widthPx = width): string {
  return boxedSvg(markup, widthPx, [0, 0, width, height]);
}

/** Thin lines from skulls to the axis. */
function leaders({ skulls, axisTop }: Series): string {
  const lines = skulls.map(({ middle, top, height }) => `M${c(middle)} ${c(top + height)}V${c(axisTop)}`);
  return `<path fill="none" stroke="${leaderColour}" stroke-width=".8" d="${lines.join('')}"/>`;
}

async function skullsMarkup(
  view: LineageView,
  { skulls }: Series,
  layers?: readonly SkullLayer[],
): Promise<string> {
  const groups = skulls.map(async ({ taxon, left, top, scale, corner: [x, y] }) => {
    const shift = `translate(${c(left - x * scale)} ${c(top - y * scale)}) scale(${scale.toFixed(4)})`;
    return `<g transform="${shift}">${await smallSkull(view, taxon, layers)}</g>`;
  });
  return (await Promise.all(groups)).join('');
}
