import { createHash } from 'node:crypto';
import { mkdir, readdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { compileLineage, type Finding } from './compile/index.ts';
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
  /** Folders of lineages that could not be compiled. */
  failed: string[];
}

const storeDir = join(projectRoot, '.lineament');

/** Folders below the content folder that hold a lineage, in the order of their names. */
export async function lineageFolders(contentDir: string): Promise<string[]> {
  const entries = await readdir(contentDir, { withFileTypes: true }).catch(() => {
    throw new Error(`no folder of lineages at ${contentDir}; name another with --content DIR`);
  });
  const folders = entries
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
  const holds = await Promise.all(folders.map((name) => exists(join(contentDir, name, 'lineage.yaml'))));
  return folders.filter((_, index) => holds[index]).map((name) => join(contentDir, name));
}

/** Compiles every lineage of a content folder, one after the other, and gathers all findings. */
export async function compileContent(contentDir: string): Promise<CompiledContent> {
  const content: CompiledContent = { lineages: [], findings: [], failed: [] };
  for (const folder of await lineageFolders(contentDir)) {
    const { compiled, findings } = await compileLineage(folder);
    content.findings.push(...findings);
    if (compiled) content.lineages.push(compiled);
    else content.failed.push(folder);
  }
  return content;
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
