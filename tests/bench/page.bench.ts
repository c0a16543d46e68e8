import { cp, readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright';
import { test } from 'vitest';
import { launchOptions, requireBrowser } from '../../scripts/browser.ts';
import { projectRoot } from '../../scripts/options.ts';
import { serveFolder } from '../../scripts/serve-folder.ts';
import { partNames } from '../../components/parts/address.ts';
import { hardLineages } from '../site/fixtures/hard-lineages.ts';
import { writeLineage } from '../site/fixtures/write-lineage.ts';
import { holdFaces, noteShifts, shiftOf } from '../site/held-faces.ts';
import { screens } from '../site/open-page.ts';
import { openingWeight, sent } from '../site/opening-weight.ts';
import { buildSite, quantile, removeSite, spread } from './built-site.ts';
import { writeRivals } from './page-rivals.ts';

const timeout = 10 * 60_000;
const runs = 15;

const median = (values: readonly number[]) => quantile(values, 0.5);
const kilobytes = (bytes: number) => `${(bytes / 1000).toFixed(1)} KB`;

async function weigh(folder: string): Promise<void> {
  const { html, css, script } = await openingWeight(folder, join('reed-trunks', 'index.html'));
  console.log(
    `explainer, gzip: HTML ${kilobytes(html)}, CSS ${kilobytes(css)}, script with what it imports ${kilobytes(script)}, together ${kilobytes(html + css + script)} (aim 90 KB, script 35 KB)`,
  );
  const parts = await Promise.all(
    partNames.map(async (part) => {
      const bytes = await sent(join(folder, 'reed-trunks', 'parts', part, 'index.html'));
      return `${part} ${kilobytes(bytes)}`;
    }),
  );
  const later = (await readdir(join(folder, '_astro'))).filter((file) => /^take-away\..*\.js$/.test(file));
  const laterBytes = await Promise.all(later.map((file) => sent(join(folder, '_astro', file))));
  console.log(
    `fetched once it has opened: ${parts.join(', ')}, and the ink of the first skull; when its section comes near: recomputation ${kilobytes(laterBytes.reduce((a, b) => a + b, 0))}`,
  );
  const files = (await readdir(folder, { recursive: true })).filter((file) => file.endsWith('.woff2'));
  const fonts = await Promise.all(files.map(async (file) => (await stat(join(folder, file))).size));
  console.log(
    `fonts: ${files.length} files, ${kilobytes(fonts.reduce((a, b) => a + b, 0))} (aim 3 files, 150 KB)`,
  );
}

/** Has the page note long tasks and layout shifts from its first moment on. */
async function watch(view: Page): Promise<void> {
  await noteShifts(view);
  await view.addInitScript(() => {
    const seen = { tasks: [] as number[] };
    Object.assign(window, { seen });
    new PerformanceObserver((list) =>
      seen.tasks.push(...list.getEntries().map(({ duration }) => duration)),
    ).observe({ type: 'longtask' });
  });
}

interface Seen {
  firstFigureMs: number;
  longest: number;
  many: number;
  shift: number;
}

/** Loads the page on a slowed processor, then scrolls by the wheel through the story and into the parts beneath it, and says what was seen. */
async function scrollThrough(view: Page, address: string, slowed: number): Promise<Seen> {
  const session = await view.context().newCDPSession(view);
  await session.send('Emulation.setCPUThrottlingRate', { rate: slowed });
  await watch(view);
  await view.goto(address, { waitUntil: 'load' });
  await view.waitForTimeout(2500);
  const firstFigureMs = await view.evaluate(
    () => performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0,
  );
  await view.evaluate(() => ((window as unknown as { seen: { tasks: number[] } }).seen.tasks.length = 0));
  await view.mouse.move(300, 500);
  for (let turn = 0; turn < 130; turn++) {
    await view.mouse.wheel(0, 160);
    await view.waitForTimeout(60);
  }
  const { tasks } = await view.evaluate(() => (window as unknown as { seen: { tasks: number[] } }).seen);
  return {
    firstFigureMs,
    longest: Math.max(0, ...tasks),
    many: tasks.length,
    shift: await shiftOf(view),
  };
}

test('the explainer: bytes, first paint, long tasks while scrolling, layout shift', { timeout }, async () => {
  const folder = buildSite('bench');
  await weigh(folder);
  const server = await serveFolder(folder);
  const browser = await chromium.launch(launchOptions(requireBrowser()));
  const seen = new Map<number, Seen[]>([
    [1, []],
    [4, []],
  ]);
  for (let run = 0; run < runs; run++)
    for (const [slowed, list] of seen) {
      const view = await browser.newPage({ viewport: { width: 1440, height: 900 } });
      list.push(await scrollThrough(view, `${server.url}reed-trunks/`, slowed));
      await view.close();
    }
  for (const [slowed, list] of seen) {
    const of = (what: keyof Seen, digits = 0) =>
      spread(
        list.map((each) => each[what]),
        digits,
      );
    console.log(
      `processor slowed ${slowed} times, medians and quartiles of ${runs}: first paint with the figure in the markup ${of('firstFigureMs')} ms, long tasks while scrolling ${of('many')}, longest ${of('longest')} ms (aim none over 50), layout shift ${of('shift', 4)} (aim 0)`,
    );
  }
  await browser.close();
  await server.close();
  await removeSite(folder);
});

/** Milliseconds until the first paint that has a figure in it, on a slowed processor with nothing kept. */
async function timeToFigure(browser: Browser, address: string, figure: string): Promise<number> {
  const view = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  const session = await view.context().newCDPSession(view);
  await session.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  await view.addInitScript((selector) => {
    const look = () => {
      const found = document.querySelector(selector);
      if (!found || found.getBoundingClientRect().height === 0) return requestAnimationFrame(look);
      return requestAnimationFrame(() => Object.assign(window, { figureMs: performance.now() }));
    };
    requestAnimationFrame(look);
  }, figure);
  await view.goto(address, { waitUntil: 'load' });
  await view.waitForFunction(() => 'figureMs' in window);
  const ms = await view.evaluate(() => (window as unknown as { figureMs: number }).figureMs);
  await view.close();
  return ms;
}

test(
  'the first figure: beside a bare page of the same words, and a chart drawn in the browser',
  { timeout },
  async () => {
    const folder = buildSite('bench-rivals');
    const { scriptBytes } = await writeRivals(folder, join(folder, 'reed-trunks'));
    const server = await serveFolder(folder);
    const browser = await chromium.launch(launchOptions(requireBrowser()));
    const pages = [
      { name: 'explainer', path: 'reed-trunks/', figure: '.plate-wide', ms: [] as number[] },
      { name: 'bare page of the same words', path: 'rivals/bare.html', figure: 'h1', ms: [] as number[] },
      {
        name: 'same marks drawn in the browser with d3',
        path: 'rivals/drawn.html',
        figure: 'svg circle',
        ms: [] as number[],
      },
    ];
    for (let run = 0; run < runs; run++)
      for (const page of pages)
        page.ms.push(await timeToFigure(browser, `${server.url}${page.path}`, page.figure));
    const bare = median(pages[1]!.ms);
    for (const { name, ms } of pages)
      console.log(
        `time to first figure, processor slowed 4 times, ${runs} interleaved runs: ${name} ${spread(ms)} ms, ${(median(ms) / bare).toFixed(2)} of the bare page (aim 1.2)`,
      );
    console.log(`script of the chart drawn in the browser, gzip: ${kilobytes(scriptBytes)}`);
    await browser.close();
    await server.close();
    await removeSite(folder);
  },
);

/** Opens a page whose faces come so late, scrolls through its story once they are there, and says how much moved. */
async function shiftOfScroll(
  browser: Browser,
  address: string,
  lateMs: number,
  screen: Size,
): Promise<number> {
  const view = await browser.newPage({ viewport: screen });
  await noteShifts(view);
  if (lateMs > 0) await holdFaces(view, lateMs);
  await view.goto(address, { waitUntil: 'commit' });
  await view.waitForTimeout(lateMs + 2000);
  await view.mouse.move(screen.width / 2, screen.height * 0.7);
  for (let turn = 0; turn < 30; turn++) {
    await view.mouse.wheel(0, 160);
    await view.waitForTimeout(50);
  }
  const shift = await shiftOf(view);
  await view.close();
  return shift;
}

type Size = { width: number; height: number };

test('layout shift with the faces held back, in three languages on three screens', { timeout }, async () => {
  const content = join(projectRoot, '.lineament', `bench-faces-content-${process.pid}`);
  await cp(join(projectRoot, 'content'), content, { recursive: true });
  await writeLineage(
    content,
    hardLineages.find(({ id }) => id === 'right-to-left')!,
  );
  const folder = buildSite('bench-faces', content);
  const server = await serveFolder(folder);
  const browser = await chromium.launch(launchOptions(requireBrowser()));
  for (const path of ['reed-trunks/', 'reed-trunks/es/', 'right-to-left/'])
    for (const { name, ...screen } of screens) {
      const shifts: string[] = [];
      for (const lateMs of [0, 300, 1500, 4000])
        shifts.push(
          `${lateMs} ms late ${(await shiftOfScroll(browser, server.url + path, lateMs, screen)).toFixed(4)}`,
        );
      console.log(`/${path} on a ${name}, faces ${shifts.join(', ')} (aim 0)`);
    }
  await browser.close();
  await server.close();
  await removeSite(folder);
  await rm(content, { recursive: true, force: true });
});
