import { readFile } from 'node:fs/promises';
import { stripTypeScriptTypes } from 'node:module';
import { join, resolve } from 'node:path';
import { chromium, type Page } from 'playwright';
import { expect, test } from 'vitest';
import { seededRandom } from '../../analysis/random/index.ts';
import type { SliceLine } from '../../components/islands/slice-line.ts';
import type { SliceRow } from '../../components/islands/slice-row.ts';
import { lineageView } from '../../components/lineage/view.ts';
import { findSliceBlock } from '../../components/slice/compose-block.ts';
import type { cutBranches } from '../../components/slice/slice-at.ts';
import type { SliceBlock } from '../../components/slice/slice-block.ts';
import { launchOptions, requireBrowser } from '../../scripts/browser.ts';
import { compileLineage } from '../../scripts/compile/index.ts';
import { projectRoot } from '../../scripts/options.ts';

const timeout = 10 * 60_000;
const slowdown = 4;
const branchCount = 24;
const runs = 15;
const stepsARun = 24;

/** The bundled lineage's shapes on 24 branches that are all alive from 50 Ma to today, crossing each other on the way. */
async function makeBlock(): Promise<SliceBlock> {
  const { compiled } = await compileLineage(resolve(import.meta.dirname, '../../content/reed-trunks'));
  const block = findSliceBlock(lineageView(compiled!, 'en'))!;
  const random = seededRandom('slice bench');
  const node = () => Math.floor(random() * block.outlines.length);
  const line = block.chart.lines[0]!;
  return {
    ...block,
    branches: Array.from({ length: branchCount }, (_, index) => ({
      id: `branch-${index}`,
      from: { ageMa: 50 },
      toMa: 0,
      lastMa: 0,
      ends: [node(), node()] as const,
      name: [{ text: `branch ${index}`, voice: 'plain' as const }],
    })),
    chart: { ...block.chart, lines: Array.from({ length: branchCount }, () => line) },
  };
}

/** A page with the row and the line alone, its sources served with their types taken off. */
async function openPage(block: SliceBlock): Promise<{ page: Page; close: () => Promise<void> }> {
  const browser = await chromium.launch(launchOptions(requireBrowser()));
  const page = await browser.newPage({ viewport: { width: 1440, height: 1000 } });
  const styles = await readFile(join(projectRoot, 'components', 'styles', 'slice.css'), 'utf8');
  const lines = block.lines
    .map(({ role }) => `<${role.endsWith('-edge') ? 'polyline' : 'polygon'} class="slice-${role}"/>`)
    .join('');
  const form = `<li class="slice-branch"><span class="slice-picture"><svg viewBox="${block.box.join(' ')}">${lines}</svg></span><span class="slice-told"><b class="slice-name"></b> <span class="slice-note"></span></span></li>`;
  const { width, height } = block.chart;
  const markup = `<!doctype html><title>bench</title><style>${styles}</style><section class="slice"><div class="slice-parts"><svg class="slice-line-layer" viewBox="0 0 ${width} ${height}"><g class="slice-handle"></g></svg><ol class="slice-branches"></ol><template class="slice-form">${form}</template></div></section>`;
  await page.route('http://bench.invalid/**', async (route) => {
    const { pathname } = new URL(route.request().url());
    if (pathname === '/') return route.fulfill({ contentType: 'text/html', body: markup });
    const source = await readFile(join(projectRoot, pathname), 'utf8');
    return route.fulfill({ contentType: 'text/javascript', body: stripTypeScriptTypes(source) });
  });
  await page.goto('http://bench.invalid/');
  // As a text, because the test runner would rewrite imports of its own.
  await page.evaluate(
    "Promise.all(['islands/slice-row', 'islands/slice-line', 'slice/slice-at'].map((name) => import(`/components/${name}.ts`))).then((all) => { globalThis.slice = Object.assign({}, ...all); })",
  );
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
  return { page, close: () => browser.close() };
}

/** Milliseconds of the page's own thread, by what it did. */
interface Spent {
  readonly all: number;
  readonly layout: number;
}

/** Makes ready to step the line; the row has its places then. */
function beginSteps(page: Page, block: SliceBlock): Promise<void> {
  return page.evaluate((given) => {
    const modules = (
      globalThis as unknown as {
        slice: {
          SliceRow: typeof SliceRow;
          SliceLine: typeof SliceLine;
          cutBranches: typeof cutBranches;
        };
      }
    ).slice;
    const handle = document.querySelector<SVGGElement>('.slice-handle')!;
    const list = document.querySelector<HTMLElement>('.slice-branches')!;
    const form = document.querySelector<HTMLTemplateElement>('.slice-form')!;
    const row = new modules.SliceRow(given, list, form);
    const line = new modules.SliceLine(given, handle);
    const step = (ageMa: number) => {
      const cut = modules.cutBranches(given, ageMa);
      line.show(ageMa, cut, 'said');
      row.show(cut);
      list.getBoundingClientRect();
    };
    step(49);
    Object.assign(globalThis, { step });
  }, block);
}

/** Steps the line from one end to the other, or back. */
function runSteps(page: Page, round: number): Promise<void> {
  return page.evaluate(
    ({ isBack, steps }) => {
      const { step } = globalThis as unknown as { step: (ageMa: number) => void };
      for (let index = 0; index < steps; index++) step(isBack ? 2 + index * 2 : 48 - index * 2);
    },
    { isBack: round % 2 === 1, steps: stepsARun },
  );
}

/**
 * Milliseconds a step, run by run: everything that the thread of the page did, and of it styles and layout. By the clock of that
 * thread, which other work on the machine does not move on; the slowdown does.
 */
async function measure(page: Page, block: SliceBlock): Promise<Spent[]> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.setTimeDomain', { timeDomain: 'threadTicks' });
  await session.send('Performance.enable');
  await beginSteps(page, block);
  const read = async (): Promise<Spent> => {
    const { metrics } = await session.send('Performance.getMetrics');
    const ms = (name: string) => 1000 * metrics.find((metric) => metric.name === name)!.value;
    return { all: ms('TaskDuration'), layout: ms('LayoutDuration') + ms('RecalcStyleDuration') };
  };
  const measured: Spent[] = [];
  for (let round = -1; round < runs; round++) {
    const before = await read();
    await runSteps(page, round);
    const after = await read();
    const perStep = (name: keyof Spent) => (after[name] - before[name]) / stepsARun;
    if (round >= 0) measured.push({ all: perStep('all'), layout: perStep('layout') });
  }
  return measured;
}

test('one step of the line across 24 branches in a browser four times slower', { timeout }, async () => {
  const block = await makeBlock();
  const { page, close } = await openPage(block);
  const measured = await measure(page, block);
  const shown = await page.locator('.slice-branch').count();
  await close();
  const told = (values: readonly number[]) => {
    const sorted = [...values].sort((one, other) => one - other);
    const at = (share: number) => sorted[Math.floor(share * sorted.length)]!.toFixed(1);
    return `median ${at(0.5)} ms (quartiles ${at(0.25)} to ${at(0.75)})`;
  };
  console.log(
    `${shown} branches, ${block.outlines[0]!.length / 2} points a skull, ${runs} runs of ${stepsARun} steps, slowed ${slowdown} times, time of the page's thread:
  script and layout ${told(measured.map(({ all }) => all))}
  script ${told(measured.map(({ all, layout }) => all - layout))}; layout ${told(measured.map(({ layout }) => layout))}`,
  );
  expect(shown).toBe(branchCount);
});
