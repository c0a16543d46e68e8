import { readFile, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { CompiledLineage } from './compile/contract.ts';

/**
 * Makes sure that a built site is whole before it is shown: every lineage has a page in each of its languages, and the
 * page carries the digest of its results. Throws an Error that names what is missing.
 */
export async function checkSite(folder: string, lineages: readonly CompiledLineage[]): Promise<void> {
  for (const { lineage, about, resultDigest } of lineages) {
    for (const [index, language] of about.languages.entries()) {
      const page = join(folder, lineage, index === 0 ? '' : language, 'index.html');
      const html = await readFile(page, 'utf8').catch(() => {
        throw new Error(`the built site lacks the page of ${lineage} in ${language}`);
      });
      if (!html.includes(resultDigest.slice(0, 12)))
        throw new Error(`the page of ${lineage} in ${language} shows other results than its records`);
    }
  }
}

/** Puts `fresh` in the place of `standing` by renaming; if that fails halfway, what stood before stands again. */
export async function swapIn(fresh: string, standing: string): Promise<void> {
  const aside = `${standing}.old-${process.pid}`;
  const stood = await stat(standing).then(
    () => true,
    () => false,
  );
  if (stood) await rename(standing, aside);
  try {
    await rename(fresh, standing);
  } catch (error) {
    if (stood) await rename(aside, standing);
    throw error;
  }
  await rm(aside, { recursive: true, force: true });
}
