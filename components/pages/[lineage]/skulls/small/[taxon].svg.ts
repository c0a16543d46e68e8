import type { APIRoute, GetStaticPaths } from 'astro';
import { drawingsOf } from '../../../../figures/skull-figures.ts';
import { smallSkull, smallSkullStyle } from '../../../../figures/small-skull.ts';
import { loadLineage, loadLineages } from '../../../../lineage/load.ts';
import { lineageView } from '../../../../lineage/view.ts';
import { findSmallSkullBox } from '../../../../slice/small-skull-box.ts';

/** One small picture a skull, all in one box and at one scale, so that they stand in a row. */
export const getStaticPaths = (async () =>
  (await loadLineages()).flatMap((lineage) => {
    const view = lineageView(lineage, lineage.about.languages[0]!);
    return drawingsOf(view).map(({ taxon }) => ({ params: { lineage: lineage.lineage, taxon } }));
  })) satisfies GetStaticPaths;

export const GET: APIRoute = async ({ params }) => {
  const lineage = await loadLineage(params['lineage']!);
  const view = lineageView(lineage, lineage.about.languages[0]!);
  const { left, top, width, height } = findSmallSkullBox(view)!;
  const markup = await smallSkull(view, params['taxon']!);
  return new Response(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="${left} ${top} ${width} ${height}">${smallSkullStyle}${markup}</svg>`,
    { headers: { 'content-type': 'image/svg+xml' } },
  );
};
