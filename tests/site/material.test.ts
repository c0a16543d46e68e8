import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, inject, test } from 'vitest';
import type { CompiledLineage } from '../../scripts/compile/contract.ts';
import { closePage, openPage, overflowOf, screens, useBrowser } from './open-page.ts';

const page = `${inject('siteUrl')}reed-trunks/`;
const folder = join(inject('siteFolder'), 'reed-trunks');
useBrowser();

const lineage = JSON.parse(await readFile(join(folder, 'lineage.json'), 'utf8')) as CompiledLineage;
const { completeness, characters } = lineage;
const soft = characters!.filter(({ softPart }) => softPart);
const bones = characters!.filter(({ softPart }) => !softPart);

describe.each(screens)('the page of records on a $name', (size) => {
  test('tells how complete each animal is, how features go with the tree, and what the living say', async () => {
    const { view, faults } = await openPage(`${page}data/`, { viewport: size });
    expect(await overflowOf(view)).toBeLessThanOrEqual(0);
    const material = view.locator('[role="region"][aria-labelledby="material"]');
    expect(await material.locator('tbody tr').count()).toBe(completeness!.taxa.length);
    const rows = await material.locator('tbody tr').allInnerTexts();
    for (const { taxon, best } of completeness!.taxa) {
      const { name } = lineage.taxa.find(({ id }) => id === taxon)!;
      const row = rows.find((each) => each.startsWith(name))!;
      expect(row.split('\t')[2], name).toBe(best === null ? 'none' : String(Math.round(best)));
    }
    expect(await view.locator('[role="region"][aria-labelledby="features"] tbody tr').count()).toBe(
      bones.length + 1,
    );
    for (const { id, model, sensitivity } of lineage.traits)
      expect(await view.locator(`[role="region"][aria-labelledby="models-${id}"] tbody tr`).count()).toBe(
        model!.compared.length + sensitivity.length,
      );
    expect(await view.getByText('yes, it lies under it').count()).toBe(
      lineage.bedOrder.filter(({ known, probability }) => known && probability === 1).length,
    );
    for (const { id, softPart } of soft)
      expect(await view.locator(`[role="region"][aria-labelledby="soft-${id}"] tbody tr`).count()).toBe(
        softPart!.brackets.length,
      );
    expect(faults).toEqual([]);
    await closePage({ view });
  });
});

test('the tree of relatives leads to what the living say of each fossil', async () => {
  const { view } = await openPage(`${page}parts/relatives/`);
  const way = (await view.locator('a[href*="#soft-"]').first().getAttribute('href'))!;
  await view.goto(new URL(way, page).href);
  expect(await view.locator(`[id="${way.split('#')[1]!}"]`).count()).toBe(1);
  await closePage({ view });
});

test.each(['completeness', 'features', 'soft-parts', 'models'])(
  '%s.csv is offered, and every row says that it is invented',
  async (name) => {
    const { view } = await openPage(`${page}data/`);
    expect(await view.locator(`a[download][href$="${name}.csv"]`).count()).toBe(1);
    await closePage({ view });
    const [header, ...rows] = (await readFile(join(folder, `${name}.csv`), 'utf8')).trim().split('\r\n');
    expect(header).toMatch(/^lineage,invented,/);
    expect(rows.length).toBeGreaterThan(4);
    for (const row of rows) expect(row).toMatch(/^reed-trunks,true,/);
  },
);
