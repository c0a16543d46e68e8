import { createHash } from 'node:crypto';
import { mkdir, readdir, rename, rm, stat, utimes, writeFile } from 'node:fs/promises';
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

const dayMs = 24 * 60 * 60 * 1000;
const storeDir = join(projectRoot, '.lineament');

/**
 * Compiles every lineage of a content folder and gathers all findings. A preview also shows what may not be published yet, and
 * says so on its pages. Throws when there is no such folder.
 */
export async function compileContent(contentDir: string, preview = false): Promise<CompiledContent> {
  if (!(await exists(contentDir)))
    throw new Error(`no folder of lineages at ${contentDir}; name another with --content DIR`);
  const results = await compileAll(contentDir, { preview });
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
  const now = new Date();
  await utimes(path, now, now);
  await removeOlder(compiled.lineage);
  return { id: compiled.lineage, languages: compiled.about.languages, digest, path };
}

/** Versions that nobody has used for a day. Younger ones may belong to another server or to another content folder. */
async function removeOlder(id: string): Promise<void> {
  for (const name of await readdir(storeDir)) {
    if (!name.startsWith(`${id}.`) || !name.endsWith('.json')) continue;
    const path = join(storeDir, name);
    const used = await stat(path).catch(() => undefined);
    if (used && Date.now() - used.mtimeMs > dayMs) await rm(path, { force: true });
  }
}

async function exists(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}
