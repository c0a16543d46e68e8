import { spawnSync } from 'node:child_process';
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { requireBrowser } from '../../scripts/browser.ts';
import { projectRoot } from '../../scripts/options.ts';
import { serveFolder } from '../../scripts/serve-folder.ts';

declare module 'vitest' {
  interface ProvidedContext {
    siteUrl: string;
    siteFolder: string;
    browserPath: string;
  }
}

/** Builds the site once, under a base path, and serves it to all browser tests as a plain folder. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const folder = join(projectRoot, '.lineament', 'test-site');
  await rm(folder, { recursive: true, force: true });
  const built = spawnSync(process.execPath, [join(projectRoot, 'scripts', 'build.ts'), '--out', folder], {
    cwd: projectRoot,
    encoding: 'utf8',
    env: { ...process.env, BASE_PATH: '/museum', INIT_CWD: projectRoot },
  });
  if (built.status !== 0) throw new Error(`the site did not build\n${built.stdout}\n${built.stderr}`);
  const server = await serveFolder(folder, '/museum/');
  project.provide('siteUrl', server.url);
  project.provide('siteFolder', folder);
  project.provide('browserPath', requireBrowser());
  return () => server.close();
}
