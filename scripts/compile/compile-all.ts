import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { compileLineage, type CompileOptions, type CompileResult } from './compile-lineage.ts';

/** A lineage's folder and what compiling it gave. */
export interface CompiledFolder extends CompileResult {
  id: string;
  folder: string;
}

/** Compiles every folder of a content folder that holds a lineage.yaml, or only those named, in the order of their names. */
export async function compileAll(
  contentDir: string,
  { only = [], ...options }: CompileOptions & { only?: readonly string[] } = {},
): Promise<CompiledFolder[]> {
  const results: CompiledFolder[] = [];
  for (const id of await lineageIds(contentDir)) {
    if (only.length > 0 && !only.includes(id)) continue;
    const folder = join(contentDir, id);
    results.push({ id, folder, ...(await compileLineage(folder, options)) });
  }
  return results;
}

/** Thrown for a folder of lineages that is not there or cannot be read. */
export class NoContent extends Error {
  constructor(contentDir: string) {
    super(`no folder of lineages at ${contentDir}; name another with --content DIR`);
  }
}

/** Names of the folders of a content folder that hold a lineage.yaml, sorted. */
export async function lineageIds(contentDir: string): Promise<string[]> {
  const entries = await readdir(contentDir, { withFileTypes: true }).catch(() => {
    throw new NoContent(contentDir);
  });
  const folders = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  const holding = await Promise.all(
    folders.map(async (name) => (await readdir(join(contentDir, name))).includes('lineage.yaml')),
  );
  return folders.filter((_, index) => holding[index]).sort();
}
