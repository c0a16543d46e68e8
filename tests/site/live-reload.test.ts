import { spawn, type ChildProcess } from 'node:child_process';
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { launchOptions } from '../../scripts/browser.ts';
import { projectRoot } from '../../scripts/options.ts';

let folder: string;
let server: ChildProcess;
let printed = '';
let browser: Browser;
let view: Page;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lineament-live-'));
  await cp(join(projectRoot, 'content'), join(folder, 'content'), { recursive: true });
  server = spawn(
    process.execPath,
    [join(projectRoot, 'scripts', 'start.ts'), '--content', 'content', '--port', '4399'],
    {
      cwd: projectRoot,
      env: {
        PATH: process.env['PATH'],
        HOME: process.env['HOME'],
        INIT_CWD: folder,
        ASTRO_DEV_BACKGROUND: '0',
      },
    },
  );
  server.stdout!.on('data', (data) => (printed += String(data)));
  server.stderr!.on('data', (data) => (printed += String(data)));
  const address = await printedAddress();
  browser = await chromium.launch(launchOptions(inject('browserPath')));
  view = await browser.newPage();
  await view.goto(`${address.replace(/\/$/, '')}/reed-trunks/`, { waitUntil: 'load', timeout: 60_000 });
});
afterAll(async () => {
  await browser?.close();
  server?.kill('SIGTERM');
  await rm(folder, { recursive: true, force: true });
});

/** Waits until the server has printed where it serves. */
async function printedAddress(): Promise<string> {
  for (let waited = 0; waited < 60_000; waited += 200) {
    const address = /http:\/\/\S+/.exec(printed)?.[0];
    if (address) return address;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  throw new Error(`the server printed no address: ${printed}`);
}

/** Rewrites one file of the lineage. */
async function edit(file: string, change: (text: string) => string): Promise<void> {
  const path = join(folder, 'content', 'reed-trunks', file);
  const text = await readFile(path, 'utf8');
  const next = change(text);
  expect(next, `the edit of ${file} changes it`).not.toBe(text);
  await writeFile(path, next);
}

const overlay = () => view.locator('vite-error-overlay').count();

test('an edited record shows without a restart', async () => {
  await edit('lineage.yaml', (text) =>
    text.replace(/^(\s*en:\s*|title:\s*\{\s*en:\s*).*?(?=,|\s*\}|$)/m, '$1A title that was edited'),
  );
  await expect
    .poll(() => view.locator('h1').textContent(), { timeout: 20_000 })
    .toContain('A title that was edited');
});

test('an edited story shows without a restart', async () => {
  await edit('story.en.mdx', (text) => text.replace(/^## .*$/m, '## A heading that was edited'));
  await expect.poll(() => view.getByText('A heading that was edited').count(), { timeout: 20_000 }).toBe(1);
});

test.each([
  ['a sheet', 'sheets/landmarks.csv'],
  ['the bibliography', 'references.bib'],
  ['a tree', 'trees/rival.nex'],
  ['a picture', 'images/obm-1183.png'],
])('a change in %s shows without a restart: the page carries the digest of its content', async (_, file) => {
  const shown = () => view.locator('.digests').textContent();
  const before = await shown();
  const path = join(folder, 'content', 'reed-trunks', file);
  // One more line, or byte, leaves every record as it was; the digest of the content tells it all the same.
  await writeFile(path, Buffer.concat([await readFile(path), Buffer.from('\n')]));
  await expect.poll(shown, { timeout: 30_000 }).not.toBe(before);
});

test('a mistake shows in the browser and the terminal with its place, and goes when it is mended', async () => {
  await edit('taxa.yaml', (text) => text.replace('role: ingroup', 'role: ancestor'));
  await expect.poll(overlay, { timeout: 20_000 }).toBe(1);
  await expect.poll(() => printed).toMatch(/taxa\.yaml:\d+:\d+/);
  const shown = () =>
    view.locator('vite-error-overlay').evaluate((element) => element.shadowRoot!.textContent);
  await expect.poll(shown, { timeout: 20_000 }).toMatch(/taxa\.yaml:\d+:\d+/);

  await edit('taxa.yaml', (text) => text.replace('role: ancestor', 'role: ingroup'));
  await expect.poll(overlay, { timeout: 20_000 }).toBe(0);
  await expect.poll(() => view.locator('.plate-wide').count(), { timeout: 20_000 }).toBe(1);
});
