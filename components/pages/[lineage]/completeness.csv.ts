import type { APIRoute } from 'astro';
import { completenessCsv } from '../../data/material-csv.ts';
import { loadLineage } from '../../lineage/load.ts';
import { lineagePaths } from '../../lineage/paths.ts';

export const getStaticPaths = lineagePaths;

export const GET: APIRoute = async ({ params }) =>
  new Response(completenessCsv(await loadLineage(params['lineage']!)), {
    headers: { 'content-type': 'text/csv; charset=utf-8' },
  });
