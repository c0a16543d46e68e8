import type { APIRoute, GetStaticPaths } from 'astro';
import { drawingsOf, skullGroup } from '../../../figures/skull-figures.ts';
import { loadLineage, loadLineages } from '../../../lineage/load.ts';
import { lineageView } from '../../../lineage/view.ts';

/** One file a skull: the page holds the skull that it opens with, and asks for the others when a step shows them. */
export const getStaticPaths = (async () => {
  const lineages = await loadLineages();
  return lineages.flatMap((lineage) =>
    drawingsOf(lineageView(lineage, lineage.about.languages[0]!)).map(({ taxon }) => ({
      params: { lineage: lineage.lineage, taxon },
    })),
  );
}) satisfies GetStaticPaths;

export const GET: APIRoute = async ({ params }) => {
  const lineage = await loadLineage(params['lineage']!);
  const group = await skullGroup(lineageView(lineage, lineage.about.languages[0]!), params['taxon']!);
  return new Response(`<svg xmlns="http://www.w3.org/2000/svg">${group}</svg>`, {
    headers: { 'content-type': 'image/svg+xml' },
  });
};
