import type { APIRoute, GetStaticPaths } from 'astro';
import { valuesCsv } from '../../data/values-csv.ts';
import { loadLineage, loadLineages } from '../../lineage/load.ts';

export const getStaticPaths = (async () =>
  (await loadLineages()).map(({ lineage }) => ({ params: { lineage } }))) satisfies GetStaticPaths;

export const GET: APIRoute = async ({ params }) =>
  new Response(valuesCsv(await loadLineage(params['lineage']!)), {
    headers: { 'content-type': 'text/csv; charset=utf-8' },
  });
