import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { chromium, type Browser } from 'playwright';
import { expect, test } from 'vitest';
import { launchOptions, requireBrowser } from '../../scripts/browser.ts';
import { projectRoot } from '../../scripts/options.ts';
import { buildSite, removeSite } from './built-site.ts';

const timeout = 10 * 60_000;
/** A visitor who does not stop at the first step. */
const hurryMs = 300;
/** How long a visitor who reads slowly stays at the first step, so that all that comes by itself has come. */
const readingMs = 8000;
const screens = [
  { name: 'desk', width: 1440, height: 900 },
  { name: 'phone', width: 390, height: 844 },
];
const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.webp': 'image/webp',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
};

/** Serves a folder as servers do: texts by gzip at its usual level, pictures and faces as they are. */
async function serveZipped(folder: string): Promise<Server> {
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const file = join(folder, pathname.endsWith('/') ? `${pathname}index.html` : pathname);
    readFile(file).then(
      (bytes) => {
        const isText = !/\.(webp|png|woff2)$/.test(file);
        response.writeHead(200, {
          'content-type': types[extname(file)] ?? 'application/octet-stream',
          ...(isText && { 'content-encoding': 'gzip' }),
        });
        response.end(isText ? gzipSync(bytes) : bytes);
      },
      () => response.writeHead(404).end(),
    );
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  return server;
}

/** The bundled content with every drawing taken out: no template, no drawing by hand. */
async function contentWithoutDrawings(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'without-drawings-'));
  await cp(join(projectRoot, 'content'), folder, { recursive: true });
  for (const [file, taken] of [
    ['reed-trunks/scheme.yaml', /, template: mammal-skull-left/],
    ['reed-trunks/specimens.yaml', /^ {2}drawing: .*\n/m],
  ] as const) {
    const path = join(folder, file);
    await writeFile(path, (await readFile(path, 'utf8')).replace(taken, ''));
  }
  return folder;
}

/** Bytes of what a page fetched, by address without its digest; a file that is fetched twice counts once. */
type Fetched = Map<string, number>;

/**
 * Opens the explainer with nothing kept, scrolls to its first step, and stays there for so long. Parts come by the clock while
 * the page is still, skulls or not; a hurried visit holds them back, so that two visits can be compared.
 */
async function openToFirstStep(
  browser: Browser,
  address: string,
  viewport: { width: number; height: number },
  stayMs: number,
): Promise<Fetched> {
  const page = await browser.newPage({ viewport });
  if (stayMs === hurryMs) await page.route('**/parts/**', (route) => route.abort());
  const session = await page.context().newCDPSession(page);
  const names = new Map<string, string>();
  const fetched: Fetched = new Map();
  session.on('Network.requestWillBeSent', ({ requestId, request }) =>
    names.set(requestId, new URL(request.url).pathname.replace(/\.[\w-]{8,12}\./, '.')),
  );
  session.on('Network.loadingFinished', ({ requestId, encodedDataLength }) =>
    fetched.set(names.get(requestId)!, encodedDataLength),
  );
  await session.send('Network.enable');
  await page.goto(address, { waitUntil: 'load' });
  await page
    .locator('.step')
    .first()
    .evaluate((step) => step.scrollIntoView({ block: 'center' }));
  await page.waitForTimeout(stayMs);
  await page.close();
  return fetched;
}

const sum = (fetched: Fetched) => [...fetched.values()].reduce((total, bytes) => total + bytes, 0);
const kilobytes = (bytes: number) => `${(bytes / 1000).toFixed(1)} KB`;

/** What differs by more than a tenth of a kilobyte, most first. */
function differences(one: Fetched, other: Fetched): string {
  return [...new Set([...one.keys(), ...other.keys()])]
    .map((name) => ({ name, more: (one.get(name) ?? 0) - (other.get(name) ?? 0) }))
    .filter(({ more }) => Math.abs(more) > 100)
    .sort((first, second) => second.more - first.more)
    .map(({ name, more }) => `    ${kilobytes(more).padStart(9)}  ${name}`)
    .join('\n');
}

test('what skulls add to the explainer before its first step is reached', { timeout }, async () => {
  const content = await contentWithoutDrawings();
  const folders = [buildSite('bench-skulls'), buildSite('bench-no-skulls', content)];
  const servers = await Promise.all(folders.map(serveZipped));
  const addresses = servers.map(
    (server) => `http://127.0.0.1:${(server.address() as AddressInfo).port}/reed-trunks/`,
  );
  const browser = await chromium.launch(launchOptions(requireBrowser()));
  for (const { name, ...viewport } of screens)
    for (const stayMs of [hurryMs, readingMs]) {
      const [withSkulls, without] = [
        await openToFirstStep(browser, addresses[0]!, viewport, stayMs),
        await openToFirstStep(browser, addresses[1]!, viewport, stayMs),
      ];
      expect([...withSkulls.keys()].some((path) => path.includes('/skulls/'))).toBe(true);
      expect([...without.keys()].some((path) => path.includes('/skulls/'))).toBe(false);
      const [all, bare] = [sum(withSkulls), sum(without)];
      const when =
        stayMs === hurryMs
          ? 'until the first step is reached'
          : `${stayMs / 1000} s after, with what comes by itself`;
      console.log(
        `${name}, bytes as sent, faces included, ${when}: ${kilobytes(all)}, without drawings ${kilobytes(bare)}, ${kilobytes(all - bare)} more${stayMs === hurryMs ? ' (aim 130 KB)' : ''}
${differences(withSkulls, without)}`,
      );
    }
  await browser.close();
  for (const server of servers) server.close();
  await Promise.all([...folders.map(removeSite), rm(content, { recursive: true })]);
});
