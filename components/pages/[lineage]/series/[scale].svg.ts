import type { APIRoute, GetStaticPaths } from 'astro';
import { loadLineage, loadLineages } from '../../../lineage/load.ts';
import { lineageView } from '../../../lineage/view.ts';
import { findSeries, seriesScales } from '../../../series/compose-series.ts';
import { seriesPicture } from '../../../series/series-picture.ts';

/** One picture a lineage and scale; it holds no words, so that it serves every language. */
export const getStaticPaths = (async () =>
  (await loadLineages()).flatMap((lineage) => {
    const view = lineageView(lineage, lineage.about.languages[0]!);
    return seriesScales.flatMap((scale) =>
      findSeries(view, scale) ? [{ params: { lineage: lineage.lineage, scale }, props: { scale } }] : [],
    );
  })) satisfies GetStaticPaths;

export const GET: APIRoute = async ({ params, props }) => {
  const lineage = await loadLineage(params['lineage']!);
  const view = lineageView(lineage, lineage.about.languages[0]!);
  const series = findSeries(view, props['scale'] === 'size' ? 'size' : 'line')!;
  return new Response(await seriesPicture(view, series), { headers: { 'content-type': 'image/svg+xml' } });
};
