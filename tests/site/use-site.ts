import { spawnSync } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll } from 'vitest';
import { projectRoot } from '../../scripts/options.ts';
import { serveFolder, type FolderServer } from '../../scripts/serve-folder.ts';

/** A site of its own for the tests of a file: the folder that it is built into, and where it is served once it is. */
export interface OwnSite {
  readonly out: string;
  /** The address of a page: `reed-trunks/`. */
  at(path: string): string;
}

/** Builds a site from the lineages that `fill` writes into a folder, serves it, and clears all of it away afterwards. */
export function useSite(name: string, fill: (content: string) => Promise<void>): OwnSite {
  const out = join(projectRoot, '.lineament', `${name}-${process.pid}`);
  let content: string;
  let server: FolderServer | undefined;
  beforeAll(async () => {
    content = await mkdtemp(join(tmpdir(), `${name}-`));
    await fill(content);
    const command = [join(projectRoot, 'scripts', 'build.ts'), '--content', content, '--out', out];
    const built = spawnSync(process.execPath, command, { cwd: projectRoot, encoding: 'utf8' });
    if (built.status !== 0) throw new Error(`the site did not build\n${built.stdout}\n${built.stderr}`);
    server = await serveFolder(out);
  }, 240_000);
  afterAll(async () => {
    await server?.close();
    await rm(content, { recursive: true, force: true });
    await rm(out, { recursive: true, force: true });
  });
  return { out, at: (path) => server!.url + path };
}
