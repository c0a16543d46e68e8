/**
 * `npm run build`: compiles the lineages and writes the site. The pages are built beside `dist`, checked, and swapped
 * in whole, so that `dist` is complete at every moment and untouched when anything is wrong.
 */
import { build } from 'astro';
import { createHash } from 'node:crypto';
import { join, resolve } from 'node:path';
import { hasErrors, printFindings } from './compile/index.ts';
import { projectRoot, readCommandLine } from './options.ts';
import { shared } from './process-share.ts';
import { compileContent } from './store.ts';
import { checkSite, swapIn } from './swap.ts';

const { contentDir, flags } = readCommandLine({
  out: { type: 'string' },
  preview: { type: 'boolean' },
});
process.env['LINEAMENT_CONTENT'] = contentDir;
const standing = process.env['INIT_CWD'] ?? process.cwd();
const out = typeof flags['out'] === 'string' ? resolve(standing, flags['out']) : join(projectRoot, 'dist');
const beside = `${out}.next-${process.pid}`;

const content = await compileContent(contentDir, flags['preview'] === true);
const { findings, lineages } = content;
shared.compiled = { contentDir, content };
const report = printFindings(findings);
if (report) console.error(report);
if (hasErrors(findings)) {
  console.error('Nothing was built; what was built before stands as it was.');
  process.exit(1);
}
try {
  await build({
    root: projectRoot,
    outDir: beside,
    logLevel: 'warn',
    // Each content folder has a cache of its own, so that one never shows in another's site.
    cacheDir: join(
      projectRoot,
      '.lineament',
      `cache-${createHash('sha256').update(contentDir).digest('hex').slice(0, 12)}`,
    ),
  });
  await checkSite(beside, lineages);
  await swapIn(beside, out);
  console.log(`Built ${lineages.length} ${lineages.length === 1 ? 'lineage' : 'lineages'} into ${out}`);
} catch (error) {
  const { rm } = await import('node:fs/promises');
  await rm(beside, { recursive: true, force: true });
  console.error((error as Error).message);
  console.error('Nothing was built; what was built before stands as it was.');
  process.exit(1);
}
