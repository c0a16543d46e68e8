import type { APIRoute, GetStaticPaths } from 'astro';
import { loadLineage, loadLineages } from '../../../lineage/load.ts';
import { lineageView, type LineageView } from '../../../lineage/view.ts';
import { findSeries, seriesScales, type Series } from '../../../series/compose-series.ts';
import {
  fineSeriesWidthPx,
  seriesOverlay,
  seriesPrint,
  seriesRaster,
  seriesWidthPx,
} from '../../../series/series-picture.ts';

interface Maker {
  type: string;
  make: (view: LineageView, series: Series) => Promise<string | Buffer>;
}

/** What each ending is made by, and its type. */
const makers: Readonly<Record<string, Maker>> = {
  '.webp': { type: 'image/webp', make: (view, series) => seriesRaster(view, series, seriesWidthPx) },
  '.fine.webp': { type: 'image/webp', make: (view, series) => seriesRaster(view, series, fineSeriesWidthPx) },
  '.over.svg': { type: 'image/svg+xml', make: seriesOverlay },
  '.print.svg': { type: 'image/svg+xml', make: seriesPrint },
};

/** The pictures of a series at each scale: bone, what lies over it, and the whole for print. They hold no words, so that they serve every language. */
export const getStaticPaths = (async () =>
  (await loadLineages()).flatMap((lineage) => {
    const view = lineageView(lineage, lineage.about.languages[0]!);
    return seriesScales
      .filter((scale) => findSeries(view, scale))
      .flatMap((scale) =>
        Object.keys(makers).map((ending) => ({
          params: { lineage: lineage.lineage, file: `${scale}${ending}` },
          props: { scale, ending },
        })),
      );
  })) satisfies GetStaticPaths;

export const GET: APIRoute = async ({ params, props }) => {
  const lineage = await loadLineage(params['lineage']!);
  const view = lineageView(lineage, lineage.about.languages[0]!);
  const maker = makers[String(props['ending'])]!;
  const made = await maker.make(view, findSeries(view, props['scale'] === 'size' ? 'size' : 'line')!);
  const body = typeof made === 'string' ? made : new Uint8Array(made);
  return new Response(body, { headers: { 'content-type': maker.type } });
};
