import { spawnSync } from 'node:child_process';
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { projectRoot } from '../../scripts/options.ts';

/** Builds the site that a bench looks at in a folder of its own, of the bundled lineages or of those in another folder. */
export function buildSite(name: string, content?: string): string {
  const out = join(projectRoot, '.lineament', `${name}-${process.pid}`);
  const words = ['--out', out, ...(content === undefined ? [] : ['--content', content])];
  const built = spawnSync(process.execPath, [join(projectRoot, 'scripts', 'build.ts'), ...words], {
    cwd: projectRoot,
    encoding: 'utf8',
  });
  if (built.status !== 0) throw new Error(`the site did not build\n${built.stdout}${built.stderr}`);
  return out;
}

/** Takes the folder of a built site away. */
export function removeSite(folder: string): Promise<void> {
  return rm(folder, { recursive: true, force: true });
}

/** What lies at a share of the way through the sorted values, 0.5 for the median. */
export function quantile(values: readonly number[], share: number): number {
  return [...values].sort((one, other) => one - other)[Math.round((values.length - 1) * share)]!;
}

/** Median of some values, with the quartiles behind it. */
export function spread(values: readonly number[], digits = 0): string {
  const at = (share: number) => quantile(values, share).toFixed(digits);
  return `${at(0.5)} (${at(0.25)}–${at(0.75)})`;
}
