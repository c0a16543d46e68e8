import type { APIRoute, GetStaticPaths } from 'astro';
import { cardOverlay, cardPrint, cardRaster, fineCardWidthPx } from '../../../../figures/card-skull.ts';
import { drawingsOf } from '../../../../figures/skull-figures.ts';
import { loadLineage, loadLineages } from '../../../../lineage/load.ts';
import { lineageView, type LineageView } from '../../../../lineage/view.ts';

/** What each ending is made by, and its type. */
const makers: Readonly<
  Record<
    string,
    {
      type: string;
      make: (view: LineageView, taxon: string) => Promise<string | Buffer | undefined>;
    }
  >
> = {
  '.webp': { type: 'image/webp', make: (view, taxon) => cardRaster(view, taxon) },
  '.fine.webp': { type: 'image/webp', make: (view, taxon) => cardRaster(view, taxon, fineCardWidthPx) },
  '.over.svg': { type: 'image/svg+xml', make: cardOverlay },
  '.print.svg': { type: 'image/svg+xml', make: cardPrint },
};

/** The pictures of skulls on cards: bone, what lies over it, and the whole for print. */
export const getStaticPaths = (async () => {
  const lineages = await loadLineages();
  return lineages.flatMap((lineage) =>
    drawingsOf(lineageView(lineage, lineage.about.languages[0]!)).flatMap(({ taxon }) =>
      Object.keys(makers).map((ending) => ({
        params: { lineage: lineage.lineage, file: `${taxon}${ending}` },
      })),
    ),
  );
}) satisfies GetStaticPaths;

export const GET: APIRoute = async ({ params }) => {
  const lineage = await loadLineage(params['lineage']!);
  const [taxon = '', ...ending] = params['file']!.split('.');
  const maker = makers[`.${ending.join('.')}`];
  const made = await maker?.make(lineageView(lineage, lineage.about.languages[0]!), taxon);
  if (!maker || made === undefined) return new Response(null, { status: 404 });
  const body = typeof made === 'string' ? made : new Uint8Array(made);
  return new Response(body, { headers: { 'content-type': maker.type } });
};
