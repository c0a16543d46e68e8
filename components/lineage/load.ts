import { readFile } from 'node:fs/promises';
import { getCollection, getEntry } from 'astro:content';
import type { CompiledLineage } from '../../scripts/compile/contract.ts';

const loaded = new Map<string, Promise<CompiledLineage>>();

/** The compiled lineage of an id. Its file is named by digest, so a path that was read once never changes. */
export async function loadLineage(id: string): Promise<CompiledLineage> {
  const entry = await getEntry('lineages', id);
  if (!entry) throw new Error(`unknown lineage: "${id}"`);
  const { path } = entry.data;
  const reading =
    loaded.get(path) ?? readFile(path, 'utf8').then((text) => JSON.parse(text) as CompiledLineage);
  loaded.set(path, reading);
  return reading;
}

/** All lineages, in the order of their ids. */
export async function loadLineages(): Promise<CompiledLineage[]> {
  const entries = await getCollection('lineages');
  return Promise.all(
    entries
      .map(({ id }: { id: string }) => id)
      .sort()
      .map(loadLineage),
  );
}
