import { coordinate } from '../figures/scene/scene.ts';
import { smallSkull, smallSkullStyle } from '../figures/small-skull.ts';
import type { LineageView } from '../lineage/view.ts';
import type { Series } from './compose-series.ts';

/** Colour of the thin lines from skulls to the axis: it is read on paper and at night. */
const leaderColour = '#8a7d6c';

/** The skulls of a series and their lines to the axis as one picture, without letters. */
export async function seriesPicture(view: LineageView, series: Series): Promise<string> {
  const c = coordinate;
  const leaders = series.skulls
    .map(({ middle, top, height }) => `M${c(middle)} ${c(top + height)}V${c(series.axisTop)}`)
    .join('');
  const skulls = await Promise.all(
    series.skulls.map(async ({ taxon, left, top, scale, corner: [x, y] }) => {
      const shift = `translate(${c(left - x * scale)} ${c(top - y * scale)}) scale(${scale.toFixed(4)})`;
      return `<g transform="${shift}">${await smallSkull(view, taxon)}</g>`;
    }),
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${series.width}" height="${series.height}" viewBox="0 0 ${series.width} ${series.height}">${smallSkullStyle}<path fill="none" stroke="${leaderColour}" stroke-width=".8" d="${leaders}"/>${skulls.join('')}</svg>`;
}
