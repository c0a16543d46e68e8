import type { APIRoute } from 'astro';
import { ratesCsv } from '../../data/section-csv.ts';
import { loadLineage } from '../../lineage/load.ts';
import { sectionPaths } from '../../lineage/paths.ts';

export const getStaticPaths = sectionPaths;

export const GET: APIRoute = async ({ params }) =>
  new Response(ratesCsv(await loadLineage(params['lineage']!)), {
    headers: { 'content-type': 'text/csv; charset=utf-8' },
  });
