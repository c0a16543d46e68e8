import type { APIRoute, GetStaticPaths } from 'astro';
import { loadLineage, loadLineages } from '../../../lineage/load.ts';
import { lineageView } from '../../../lineage/view.ts';
import { findSliceBlock } from '../../../slice/compose-block.ts';

/** One block a lineage and language; a page asks for it when the line across the tree is first moved. */
export const getStaticPaths = (async () =>
  (await loadLineages()).flatMap((lineage) =>
    lineage.about.languages.flatMap((language) =>
      findSliceBlock(lineageView(lineage, language))
        ? [{ params: { lineage: lineage.lineage, language } }]
        : [],
    ),
  )) satisfies GetStaticPaths;

export const GET: APIRoute = async ({ params }) => {
  const lineage = await loadLineage(params['lineage']!);
  const block = findSliceBlock(lineageView(lineage, params['language']!));
  return new Response(JSON.stringify(block), { headers: { 'content-type': 'application/json' } });
};
