import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { chromium, type CDPSession, type Page } from 'playwright';
import { expect, test } from 'vitest';
import { seededRandom } from '../../analysis/random/index.ts';
import { heightOfAge } from '../../components/slice/chart-places.ts';
import type { SliceBlock } from '../../components/slice/slice-block.ts';
import { launchOptions, requireBrowser } from '../../scripts/browser.ts';
import { serveFolder } from '../../scripts/serve-folder.ts';
import { buildSite, removeSite, spread } from './built-site.ts';

const timeout = 10 * 60_000;
const slowdown = 4;
const branchCount = 24;
const runs = 15;
const stepsARun = 24;
const screens = [
  { name: 'desk', width: 1440, height: 900 },
  { name: 'phone', width: 390, height: 844 },
];

/** The bundled lineage's shapes on 24 branches that are all alive from 50 Ma to today, crossing each other on the way. */
async function readBlock(folder: string): Promise<SliceBlock> {
  const file = join(folder, 'reed-trunks', 'slice', 'en.json');
  const block = JSON.parse(await readFile(file, 'utf8')) as SliceBlock;
  const random = seededRandom('slice bench');
  const node = () => Math.floor(random() * block.outlines.length);
  return {
    ...block,
    branches: Array.from({ length: branchCount }, (_, index) => ({
      id: `branch-${index}`,
      from: { ageMa: 50 },
      toMa: 0,
      lastMa: 0,
      ends: [node(), node()] as const,
      name: block.branches[index]!.name,
    })),
    chart: {
      ...block.chart,
      lines: Array.from({ length: branchCount }, () => block.chart.lines[0]!),
    },
  };
}

/** Opens the whole explainer with these branches in its slice, the chart at the top of the screen. */
async function openSlice(page: Page, address: string, block: SliceBlock): Promise<CDPSession> {
  await page.route('**/slice/en.json', (route) => route.fulfill({ json: block }));
  await page.goto(`${address}reed-trunks/?cut=49`);
  await page.waitForFunction(() => !document.querySelector('.later-part'));
  await page.waitForFunction(
    (count) => document.querySelectorAll('.slice-row:first-child .slice-branch').length === count,
    branchCount,
  );
  await page.locator('.slice-figure').evaluate((figure) => figure.scrollIntoView({ behavior: 'instant' }));
  await page.locator('.slice-chart').evaluate((chart) => chart.scrollIntoView({ behavior: 'instant' }));
  await page.waitForTimeout(800);
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.setTimeDomain', { timeDomain: 'threadTicks' });
  await session.send('Performance.enable');
  await session.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
  return session;
}

/** Milliseconds of the page's thread a step. */
interface Spent {
  readonly script: number;
  readonly layout: number;
  /** With pictures of the screen made ready, and all else that the thread did. */
  readonly all: number;
}

/** Drags the line with the mouse from one end of time to the other, a frame for every step. */
async function drag(page: Page, session: CDPSession, { chart }: SliceBlock): Promise<Spent> {
  const box = (await page.locator('.slice-line-layer').boundingBox())!;
  const across = box.x + box.width / 2;
  const down = (age: number) => box.y + (heightOfAge(chart, age) / chart.height) * box.height;
  const now = Number(await page.locator('.slice-handle').getAttribute('aria-valuenow'));
  const ages = Array.from({ length: stepsARun }, (_, step) => (now > 25 ? 48 - step * 2 : 2 + step * 2));
  await page.mouse.move(across, down(now));
  await page.mouse.down();
  await page.waitForTimeout(60);
  const before = await readSpent(session);
  for (const age of ages) {
    await page.mouse.move(across, down(age));
    await page.evaluate(() => new Promise(requestAnimationFrame));
  }
  const after = await readSpent(session);
  await page.mouse.up();
  await page.waitForTimeout(300);
  const perStep = (what: keyof Spent) => (after[what] - before[what]) / stepsARun;
  return { script: perStep('script'), layout: perStep('layout'), all: perStep('all') };
}

/** What the thread has done so far by its own clock, which other work on the machine does not move on; the slowdown does. */
async function readSpent(session: CDPSession): Promise<Spent> {
  const { metrics } = await session.send('Performance.getMetrics');
  const ms = (name: string) => 1000 * metrics.find((metric) => metric.name === name)!.value;
  return {
    script: ms('ScriptDuration'),
    layout: ms('LayoutDuration') + ms('RecalcStyleDuration'),
    all: ms('TaskDuration'),
  };
}

test(
  'one step of a line that is dragged across 24 branches, on a processor four times slower',
  { timeout },
  async () => {
    const folder = buildSite('bench-slice');
    const server = await serveFolder(folder);
    const block = await readBlock(folder);
    const browser = await chromium.launch(launchOptions(requireBrowser()));
    for (const { name, width, height } of screens) {
      const page = await browser.newPage({ viewport: { width, height } });
      const session = await openSlice(page, server.url, block);
      const spent: Spent[] = [];
      for (let run = -1; run < runs; run++) {
        const each = await drag(page, session, block);
        if (run >= 0) spent.push(each);
      }
      const shown = await page.locator('.slice-row:first-child .slice-branch').count();
      const told = (of: (each: Spent) => number) => spread(spent.map(of), 1);
      console.log(
        `${name} ${width}x${height}, the whole explainer, ${shown} branches, ${runs} drags of ${stepsARun} steps, slowed ${slowdown} times, ms a step of the page's thread, median (quartiles):
  script and layout ${told(({ script, layout }) => script + layout)} (aim 8); script ${told(({ script }) => script)}; styles and layout ${told(({ layout }) => layout)}; with painting and all else ${told(({ all }) => all)}`,
      );
      expect(shown).toBe(branchCount);
      await page.close();
    }
    await browser.close();
    await server.close();
    await removeSite(folder);
  },
);
