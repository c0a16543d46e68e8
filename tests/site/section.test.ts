import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, inject, test } from 'vitest';
import type { CompiledLineage } from '../../scripts/compile/contract.ts';
import { closePage, openPage, overflowOf, screens, useBrowser } from './open-page.ts';
import { rulesBroken } from './rules.ts';
import { readStep } from './visit.ts';

const page = `${inject('siteUrl')}loam-delvers/`;
const folder = join(inject('siteFolder'), 'loam-delvers');
useBrowser();

const lineage = JSON.parse(await readFile(join(folder, 'lineage.json'), 'utf8')) as CompiledLineage;
const section = lineage.section!;
const levels = section.levels.filter(({ unworn, worn }) => unworn + worn > 0);

describe.each(screens)('the page of a sampled section on a $name', (size) => {
  test.each([true, false])('is whole with script %s', async (script) => {
    const { view, faults } = await openPage(page, { viewport: size, javaScriptEnabled: script });
    expect(await overflowOf(view)).toBeLessThanOrEqual(0);
    expect(await view.locator('.plate:visible').count()).toBe(1);
    expect(await view.locator('.plate:visible .layer-marks .disc').count()).toBe(levels.length);
    expect(
      await view.locator('.plate:visible .layer-focus.in-focus .skull').count(),
      'a tooth is drawn',
    ).toBe(2);
    expect(await view.locator('.caption:visible').count()).toBe(1);
    expect(await view.locator('.levels tbody tr').count()).toBe(section.levels.length);
    expect(await view.locator('.models').count()).toBe(2);
    expect(await view.getByText('Invented for teaching').count()).toBe(1);
    expect(faults).toEqual([]);
    await closePage({ view });
  });

  test.each(['light', 'dark'] as const)('has no fault that a checker of access finds, %s', async (scheme) => {
    const { view } = await openPage(page, { viewport: size, colorScheme: scheme, reducedMotion: 'reduce' });
    for (const address of [page, `${page}es/`, `${page}data/`]) {
      await view.goto(address);
      expect(await rulesBroken(view, { rules: 'all' })).toEqual([]);
    }
    await closePage({ view });
  });

  test('brings the level of a step into focus, with its tooth and its caption', async () => {
    const { view } = await openPage(page, { viewport: size, reducedMotion: 'reduce' });
    await readStep(view, '.step[data-focus="larkstone-07"]');
    await expect.poll(() => view.locator('.caption:visible').getAttribute('data-of')).toBe('larkstone-07');
    const flag = view.locator('.plate:visible .layer-focus.in-focus .flag-value');
    const mean = levels.find(({ id }) => id === 'larkstone-07')!.estimate!;
    expect(await flag.textContent()).toContain(mean.toFixed(1));
    await closePage({ view });
  });
});

test('the tip of the tooth stands over the mean of its level, to half a pixel', async () => {
  const { view } = await openPage(page, { reducedMotion: 'reduce' });
  const places = await view.locator('.plate:visible').evaluate((plate) => {
    const inside = (selector: string) => plate.querySelector(`.layer-focus.in-focus ${selector}`)!;
    const crown = inside('.skull[href="#tooth-crown"]').getBoundingClientRect();
    const ring = inside('.focus-ring').getBoundingClientRect();
    return { tip: crown.right, mean: ring.x + ring.width / 2 };
  });
  expect(Math.abs(places.tip - places.mean)).toBeLessThan(1.5);
  await closePage({ view });
});

test('levels are walked by keyboard, and each is told to those who listen', async () => {
  const { view } = await openPage(page, { reducedMotion: 'reduce' });
  const [first, second] = levels.map(({ id }) => id);
  expect(await view.locator('.caption:visible').getAttribute('data-of')).toBe(first);
  const above = view.getByRole('button', { name: 'Level above' });
  await above.focus();
  await view.keyboard.press('Enter');
  expect(await view.locator('.caption:visible').getAttribute('data-of')).toBe(second);
  expect(await view.locator('.captions [role="status"]').textContent()).toContain('Level 2');
  await closePage({ view });
});

test('a level of the story leads to its row, and its files hold every row', async () => {
  const { view } = await openPage(page);
  const link = view.locator('.step .value').first();
  const row = (await link.getAttribute('href'))!;
  expect(await view.locator(`tr${row}`).count()).toBe(1);
  const individuals = await readFile(join(folder, 'individuals.csv'), 'utf8');
  expect(individuals.trim().split('\r\n')).toHaveLength(1 + section.individuals.length);
  expect((await readFile(join(folder, 'levels.csv'), 'utf8')).trim().split('\r\n')).toHaveLength(
    1 + section.levels.length,
  );
  await closePage({ view });
});

test('what the page says of the models is what was compiled, and in forced colours the figure stays', async () => {
  const { view } = await openPage(page, { forcedColors: 'active' });
  const best = Math.max(...section.models.joint.map(({ weight }) => weight!));
  expect(await view.locator('.verdict').innerText()).toContain(`${Math.round(100 * best)}%`);
  expect(section.verdict.code === 'cannot-tell').toBe(best < section.verdict.leastWeight);
  expect(await view.locator('.plate:visible .layer-marks .disc').first().isVisible()).toBe(true);
  await view.emulateMedia({ media: 'print' });
  expect(await view.locator('.plate:visible').count()).toBe(1);
  expect(await view.locator('.verdict').isVisible()).toBe(true);
  await closePage({ view });
});
