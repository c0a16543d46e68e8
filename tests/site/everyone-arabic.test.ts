import { spawnSync } from 'node:child_process';
import { cp, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { partNames } from '../../components/parts/address.ts';
import { projectRoot } from '../../scripts/options.ts';
import { serveFolder, type FolderServer } from '../../scripts/serve-folder.ts';
import { drawnOrder } from './drawn-order.ts';
import { writeInArabicLetters } from './fixtures/arabic-letters.ts';
import { shiftWithLateFaces } from './held-faces.ts';
import { overflowOf, screens, useBrowser } from './open-page.ts';
import { visit } from './visit.ts';

useBrowser();
let content: string;
let server: FolderServer;
const out = join(projectRoot, '.lineament', `arabic-${process.pid}`);

beforeAll(async () => {
  content = await mkdtemp(join(tmpdir(), 'arabic-letters-'));
  const ours = join(projectRoot, 'content');
  await cp(join(ours, 'templates'), join(content, 'templates'), { recursive: true });
  for (const id of ['reed-trunks', 'loam-delvers']) await writeInArabicLetters(ours, content, id);
  const command = [join(projectRoot, 'scripts', 'build.ts'), '--content', content, '--out', out];
  const built = spawnSync(process.execPath, command, { cwd: projectRoot, encoding: 'utf8' });
  if (built.status !== 0) throw new Error(`the lineages in Arabic letters did not build\n${built.stderr}`);
  server = await serveFolder(out);
}, 240_000);
afterAll(async () => {
  await server?.close();
  await rm(content, { recursive: true, force: true });
  await rm(out, { recursive: true, force: true });
});

const trunks = 'arabic-reed-trunks/';
/** Every kind of page, and how many quantities it has at the least. */
const pages: [path: string, quantities: number][] = [
  [trunks, 300],
  [`${trunks}data/`, 50],
  ...partNames.map((part): [string, number] => [`${trunks}parts/${part}/`, 3]),
  ['arabic-loam-delvers/', 100],
  ['arabic-loam-delvers/data/', 20],
  ['methods/ar/', 10],
];

describe.each(screens)('from right to left on a $name', ({ width, height }) => {
  test.each(pages)('every range, error, date and unit of /%s is drawn as it is read', async (path, least) => {
    await visit(server.url + path, { viewport: { width, height } }, async ({ view, faults }) => {
      await view
        .locator('details')
        .evaluateAll((all) => all.forEach((each) => each.setAttribute('open', '')));
      const { seen, wrong } = await drawnOrder(view);
      expect(wrong).toEqual([]);
      expect(seen).toBeGreaterThanOrEqual(least);
      expect(await overflowOf(view)).toBeLessThanOrEqual(0);
      expect(faults).toEqual([]);
    });
  });

  test('nothing on the explainer moves when the faces come late', async () => {
    await visit('about:blank', { viewport: { width, height } }, async ({ view }) => {
      expect(await shiftWithLateFaces(view, server.url + trunks)).toBe(0);
    });
  });
});

test('in print every range is drawn as it is read', async () => {
  await visit(server.url + trunks, { viewport: { width: 794, height: 1123 } }, async ({ view }) => {
    await view.emulateMedia({ media: 'print' });
    expect((await drawnOrder(view)).wrong).toEqual([]);
  });
});
