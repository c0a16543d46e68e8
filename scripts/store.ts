import { createHash } from 'node:crypto';
import { mkdir, readdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { compileAll, type Finding } from './compile/index.ts';
import type { CompiledLineage } from './compile/contract.ts';
import { projectRoot } from './options.ts';

/** A compiled lineage on disk: `.lineament/<id>.<digest>.json`. */
export interface StoredLineage {
  id: string;
  languages: string[];
  digest: string;
  path: string;
}

export interface CompiledContent {
  lineages: CompiledLineage[];
  findings: Finding[];
  /** Ids of lineages that could not be compiled. */
  failed: string[];
}

const storeDir = join(projectRoot, '.lineament');

/** Compiles every lineage of a content folder and gathers all findings. Throws when there is no such folder. */
export async function compileContent(contentDir: string): Promise<CompiledContent> {
  if (!(await exists(contentDir)))
    throw new Error(`no folder of lineages at ${contentDir}; name another with --content DIR`);
  const results = await compileAll(contentDir);
  return {
    lineages: results.flatMap(({ compiled }) => compiled ?? []),
    findings: results.flatMap(({ findings }) => findings),
    failed: results.filter(({ compiled }) => !compiled).map(({ id }) => id),
  };
}

/** Writes a compiled lineage under its digest, whole or not at all, and removes older versions of it. */
export async function storeLineage(compiled: CompiledLineage): Promise<StoredLineage> {
  const text = JSON.stringify(compiled);
  const digest = createHash('sha256').update(text).digest('hex').slice(0, 16);
  const path = join(storeDir, `${compiled.lineage}.${digest}.json`);
  await mkdir(storeDir, { recursive: true });
  if (!(await exists(path))) {
    const fresh = `${path}.${process.pid}.tmp`;
    await writeFile(fresh, text);
    await rename(fresh, path);
  }
  await removeOlder(compiled.lineage, path);
  return { id: compiled.lineage, languages: compiled.about.languages, digest, path };
}

/** Versions that no page of the last minute can still be reading. */
async function removeOlder(id: string, keep: string): Promise<void> {
  for (const name of await readdir(storeDir)) {
    const path = join(storeDir, name);
    if (!name.startsWith(`${id}.`) || !name.endsWith('.json') || path === keep) continue;
    const { mtimeMs } = await stat(path);
    const { mtimeMs: newest } = await stat(keep);
    if (newest - mtimeMs > 60_000) await rm(path, { force: true });
  }
}

async function exists(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}
