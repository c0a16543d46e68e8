import type { APIRoute } from 'astro';
import { modelsCsv } from '../../data/models.ts';
import { loadLineage } from '../../lineage/load.ts';
import { lineagePaths } from '../../lineage/paths.ts';

export const getStaticPaths = lineagePaths;

export const GET: APIRoute = async ({ params }) =>
  new Response(modelsCsv(await loadLineage(params['lineage']!)), {
    headers: { 'content-type': 'text/csv; charset=utf-8' },
  });
