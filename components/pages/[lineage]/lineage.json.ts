import type { APIRoute, GetStaticPaths } from 'astro';
import { loadLineage, loadLineages } from '../../lineage/load.ts';

export const getStaticPaths = (async () =>
  (await loadLineages()).map(({ lineage }) => ({ params: { lineage } }))) satisfies GetStaticPaths;

/** The compiled lineage, as `compute` prints it. */
export const GET: APIRoute = async ({ params }) =>
  new Response(`${JSON.stringify(await loadLineage(params['lineage']!), null, 2)}\n`, {
    headers: { 'content-type': 'application/json' },
  });
