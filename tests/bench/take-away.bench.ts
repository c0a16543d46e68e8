import { readFile } from 'node:fs/promises';
import { stripTypeScriptTypes } from 'node:module';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright';
import { expect, test } from 'vitest';
import { normalDraw, seededRandom } from '../../analysis/random/index.ts';
import { tipsOf } from '../../analysis/tree/index.ts';
import type * as Recompute from '../../components/take-away/recompute.ts';
import { launchOptions, requireBrowser } from '../../scripts/browser.ts';
import { projectRoot } from '../../scripts/options.ts';
import { randomTree } from '../reference/random-tree.ts';

/** Minutes that a measurement may take on a slow machine. */
const timeout = 10 * 60_000;

/** How many times slower than this machine the browser is made to run. */
const slowdown = 4;

/** A random tree of tips of many ages: one broken, one never measured, all others measured with a variance of 1. */
function makeData(tips: number): Recompute.LiveNumbers {
  const random = seededRandom('take-away bench', tips);
  const tree = randomTree(tips, random);
  const values = new Float64Array(tree.parent.length);
  for (let node = values.length - 2; node >= 0; node--)
    values[node] = values[tree.parent[node]!]! + Math.sqrt(tree.branchLength[node]!) * normalDraw(random);
  const [broken, missing, ...measured] = tipsOf(tree);
  const name = (tip: number) => tree.label[tip]!;
  return {
    scale: { kind: 'plain' },
    model: 'brownian',
    level: 0.95,
    seed: 1,
    tree: { parent: [...tree.parent], ageMa: [...tree.ageMa], taxon: [...tree.label] },
    measured: {
      taxon: measured.map(name),
      mean: measured.map((tip) => values[tip]! + normalDraw(random)),
      variance: measured.map(() => 1),
    },
    limits: [{ taxon: name(broken!), specimen: 'broken', atLeast: values[broken!]! - 1, twig: 1.1 }],
    unmeasured: [name(broken!), name(missing!)],
  };
}

/** A page of the bench's own that can import the project's sources, their types taken off. */
async function openPage(): Promise<{ page: Page; close: () => Promise<void> }> {
  const browser = await chromium.launch(launchOptions(requireBrowser()));
  const page = await browser.newPage();
  await page.route('http://bench.invalid/**', async (route) => {
    const { pathname } = new URL(route.request().url());
    if (pathname === '/')
      return route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>bench</title>' });
    const source = await readFile(join(projectRoot, pathname), 'utf8');
    return route.fulfill({ contentType: 'text/javascript', body: stripTypeScriptTypes(source) });
  });
  await page.goto('http://bench.invalid/');
  // As a text, because the test runner would rewrite an import of its own.
  await page.evaluate(
    "import('/components/take-away/recompute.ts').then((module) => { globalThis.recompute = module; })",
  );
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
  return { page, close: () => browser.close() };
}

/** Milliseconds in the browser to work out all that a visitor sees at once who hides two skulls, pair after pair. */
function measure(page: Page, live: Recompute.LiveNumbers): Promise<number[]> {
  return page.evaluate((data) => {
    const { estimateWithout } = (globalThis as unknown as { recompute: typeof Recompute }).recompute;
    const hide = (turn: number) => {
      const { taxon } = data.measured;
      return estimateWithout(data, new Set([taxon[turn % taxon.length]!, taxon[(turn + 1) % taxon.length]!]));
    };
    return Array.from({ length: 40 }, (_, turn) => {
      const start = performance.now();
      hide(turn);
      return performance.now() - start;
    });
  }, live);
}

test('two skulls hidden in a browser four times slower', { timeout }, async () => {
  const { page, close } = await openPage();
  for (const tips of [24, 200]) {
    const [first, ...later] = await measure(page, makeData(tips));
    const sorted = later.sort((a, b) => a - b);
    const [lower, median, upper] = [0.25, 0.5, 0.75].map(
      (share) => sorted[Math.floor(share * sorted.length)]!,
    );
    const text = [first!, median!, lower!, upper!].map((ms) => ms.toFixed(1));
    console.log(
      `${tips} taxa, two hidden, one limit, slowed ${slowdown} times: first ${text[0]} ms, then ${text[1]} ms (quartiles ${text[2]} to ${text[3]})`,
    );
    expect(median).toBeGreaterThan(0);
  }
  await close();
});
