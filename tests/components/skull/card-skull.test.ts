import { resolve } from 'node:path';
import sharp from 'sharp';
import { beforeAll, expect, test } from 'vitest';
import {
  cardBox,
  cardOverlay,
  cardPrint,
  cardRaster,
  cardWidthPx,
  fineCardWidthPx,
} from '../../../components/figures/card-skull.ts';
import { lineageView, type LineageView } from '../../../components/lineage/view.ts';
import { compileLineage } from '../../../scripts/compile/index.ts';

let view: LineageView;
beforeAll(async () => {
  const { compiled } = await compileLineage(resolve(import.meta.dirname, '../../../content/reed-trunks'));
  view = lineageView(compiled!, 'en');
});

test('the bone of a card is a small picture on a clear ground', async () => {
  const picture = await cardRaster(view, 'limnorhina-placida');
  const { format, width, hasAlpha } = await sharp(picture).metadata();
  expect([format, width, hasAlpha]).toEqual(['webp', cardWidthPx, true]);
  expect(picture!.length).toBeLessThan(16_000);
  const fine = await cardRaster(view, 'limnorhina-placida', fineCardWidthPx);
  expect((await sharp(fine).metadata()).width).toBe(960);
  expect(fine!.length).toBeLessThan(36_000);
});

test('every card shows the same part of the frame, so that eyes line up', async () => {
  const box = `viewBox="${cardBox(view).join(' ')}"`;
  for (const taxon of ['calamorhina-vivax', 'limnorhina-fracta', 'riparhina-dura'])
    expect(await cardOverlay(view, taxon)).toContain(box);
});

test('what lies over it is what was restored, the torn edge, the trait and a bar of real millimetres', async () => {
  const over = (await cardOverlay(view, 'limnorhina-fracta'))!;
  expect(over).toMatch(/skull-restored.*skull-torn.*skull-accent/);
  expect(over).not.toContain('skull-bone');
  const [, start, end, lengthMm] = /M(-?[\d.]+) [\d.]+H([\d.]+).*data-mm="(\d+)"/.exec(over)!.map(Number);
  const { mmPerUnit } = view.lineage.drawings.find(({ taxon }) => taxon === 'limnorhina-fracta')!;
  expect((end! - start!) * mmPerUnit!).toBeCloseTo(lengthMm!, 3);
});

test('of a fragment neither restored parts nor an inferred opening are on its card', async () => {
  for (const markup of [
    await cardOverlay(view, 'calathorhina-mira'),
    await cardPrint(view, 'calathorhina-mira'),
  ])
    expect(markup).not.toMatch(/skull-restored|skull-accent/);
});

test('on paper a card has the whole skull in black lines', async () => {
  const printed = (await cardPrint(view, 'limnorhina-fracta'))!;
  expect(printed).toMatch(/skull-bone.*skull-restored.*skull-accent/);
  expect(printed).not.toContain('#a2301a');
});

test('a drawing by hand stands on its card in place of the diagram', async () => {
  expect(await cardOverlay(view, 'riparhina-dura')).toContain('skull-own-accent');
  expect((await cardRaster(view, 'riparhina-dura'))!.length).toBeGreaterThan(3000);
});

test('an animal without a drawing has none', async () => {
  expect(await cardOverlay(view, 'ossorhina-obscura')).toBeUndefined();
  expect(await cardRaster(view, 'ossorhina-obscura')).toBeUndefined();
});
