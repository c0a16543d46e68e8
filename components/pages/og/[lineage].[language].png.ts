import type { APIRoute, GetStaticPaths } from 'astro';
import { loadLineage, loadLineages } from '../../lineage/load.ts';
import tokens from '../../styles/tokens.css?raw';
import { pictureStyle } from './_picture/paper-style.ts';
import { cardPicture } from './_picture/raster.ts';

export const getStaticPaths = (async () => {
  const lineages = await loadLineages();
  return lineages.flatMap(({ lineage, about }) =>
    about.languages.map((language) => ({ params: { lineage, language } })),
  );
}) satisfies GetStaticPaths;

const figureSheets = import.meta.glob<string>(['../../styles/figure/*.css', '!**/index.css'], {
  query: '?raw',
  import: 'default',
  eager: true,
});
const style = pictureStyle(Object.values(figureSheets).join('\n'), tokens);

/** The picture of one lineage in one language. */
export const GET: APIRoute = async ({ params }) => {
  const lineage = await loadLineage(params['lineage']!);
  const picture = await cardPicture(lineage, params['language']!, style);
  return new Response(new Uint8Array(picture), { headers: { 'content-type': 'image/png' } });
};
