import { spawnSync } from 'node:child_process';
import { readdir, readFile, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { chromium, type Page } from 'playwright';
import { test } from 'vitest';
import { launchOptions, requireBrowser } from '../../scripts/browser.ts';
import { projectRoot } from '../../scripts/options.ts';
import { serveFolder } from '../../scripts/serve-folder.ts';

const timeout = 10 * 60_000;
const runs = 7;

/** Builds the site that the bench looks at, in a folder of its own. */
function build(out: string): void {
  const built = spawnSync(process.execPath, [join(projectRoot, 'scripts', 'build.ts'), '--out', out], {
    cwd: projectRoot,
    encoding: 'utf8',
  });
  if (built.status !== 0) throw new Error(`the site did not build\n${built.stderr}`);
}

const median = (values: readonly number[]) =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
const kilobytes = (bytes: number) => `${(bytes / 1000).toFixed(1)} KB`;

/** Bytes of a file as a server sends it, by gzip at its usual level. */
async function sent(path: string): Promise<number> {
  return gzipSync(await readFile(path)).length;
}

async function weigh(folder: string): Promise<void> {
  const html = await sent(join(folder, 'reed-trunks', 'index.html'));
  const text = await readFile(join(folder, 'reed-trunks', 'index.html'), 'utf8');
  const named = [
    ...new Set([...text.matchAll(/(?:href|src)="(\/[^"]+\.(?:css|js))"/g)].map(([, path]) => path!)),
  ];
  const weights = await Promise.all(
    named.map(async (path) => ({ path, bytes: await sent(join(folder, path)) })),
  );
  const sum = (end: string) =>
    weights.filter(({ path }) => path.endsWith(end)).reduce((total, { bytes }) => total + bytes, 0);
  const files = (await readdir(folder, { recursive: true })).filter((file) => file.endsWith('.woff2'));
  const fonts = await Promise.all(files.map(async (file) => (await stat(join(folder, file))).size));
  console.log(
    `explainer, gzip: HTML ${kilobytes(html)}, CSS ${kilobytes(sum('.css'))}, script named in the page ${kilobytes(sum('.js'))}, together ${kilobytes(html + sum('.css') + sum('.js'))} (aim 90 KB, script 35 KB)`,
  );
  console.log(
    `fonts: ${files.length} files, ${kilobytes(fonts.reduce((a, b) => a + b, 0))} (aim 3 files, 150 KB)`,
  );
}

/** Has the page note long tasks and layout shifts from its first moment on. */
async function watch(view: Page): Promise<void> {
  await view.addInitScript(() => {
    const seen = { tasks: [] as number[], shift: 0 };
    Object.assign(window, { seen });
    new PerformanceObserver((list) =>
      seen.tasks.push(...list.getEntries().map(({ duration }) => duration)),
    ).observe({
      type: 'longtask',
    });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) seen.shift += (entry as unknown as { value: number }).value;
    }).observe({ type: 'layout-shift', buffered: true });
  });
}

interface Seen {
  firstFigureMs: number;
  longest: number;
  many: number;
  shift: number;
}

/** Loads the page on a slowed processor, then scrolls through the story by the wheel and says what was seen. */
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
  for (let turn = 0; turn < 40; turn++) {
    await view.mouse.wheel(0, 160);
    await view.waitForTimeout(60);
  }
  const { tasks, shift } = await view.evaluate(
    () => (window as unknown as { seen: { tasks: number[]; shift: number } }).seen,
  );
  return { firstFigureMs, longest: Math.max(0, ...tasks), many: tasks.length, shift };
}

test('the explainer: bytes, first paint, long tasks while scrolling, layout shift', { timeout }, async () => {
  const folder = join(projectRoot, '.lineament', `bench-${process.pid}`);
  build(folder);
  await weigh(folder);
  const server = await serveFolder(folder);
  const browser = await chromium.launch(launchOptions(requireBrowser()));
  for (const slowed of [1, 4]) {
    const seen: Seen[] = [];
    for (let run = 0; run < runs; run++) {
      const view = await browser.newPage({ viewport: { width: 1440, height: 900 } });
      seen.push(await scrollThrough(view, `${server.url}reed-trunks/`, slowed));
      await view.close();
    }
    const of = (what: keyof Seen) => median(seen.map((each) => each[what]));
    console.log(
      `processor slowed ${slowed} times, medians of ${runs}: first paint with the figure in the markup ${of('firstFigureMs').toFixed(0)} ms, long tasks while scrolling ${of('many')}, longest ${of('longest').toFixed(0)} ms (aim none over 50), layout shift ${of('shift').toFixed(4)} (aim 0)`,
    );
  }
  await browser.close();
  await server.close();
  await rm(folder, { recursive: true, force: true });
});
