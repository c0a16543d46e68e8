import type { APIRoute } from 'astro';
import { loadLineage } from '../../lineage/load.ts';
import { lineagePaths } from '../../lineage/paths.ts';

export const getStaticPaths = lineagePaths;

/** The compiled lineage, as `compute` prints it. */
export const GET: APIRoute = async ({ params }) =>
  new Response(`${JSON.stringify(await loadLineage(params['lineage']!), null, 2)}\n`, {
    headers: { 'content-type': 'application/json' },
  });
