import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { cardBox } from '../../components/figures/card-skull.ts';
import {
  keptMarkup,
  pictureSizes,
  skullPictures,
  type PictureWish,
} from '../../components/figures/skull/skull-pictures.ts';
import type { SkullDrawing } from '../../components/figures/skull/skull-drawing.ts';
import { drawingsOf, skullDrawing } from '../../components/figures/skull-figures.ts';
import { lineageView, type LineageView } from '../../components/lineage/view.ts';
import { makePicture } from '../../components/photographs/make-picture.ts';
import { lineagePhotographs } from '../../components/photographs/photographs.ts';
import { pictureSizes as photographSizes } from '../../components/photographs/picture-sizes.ts';
import { compileLineage } from '../../scripts/compile/index.ts';

const bundled = fileURLToPath(new URL('../../content/reed-trunks', import.meta.url));
const timeout = 60 * 60_000;
const keptRuns = 15;

let view: LineageView;
let skulls: SkullDrawing[];
let folder = '';

beforeAll(async () => {
  const { compiled } = await compileLineage(bundled);
  view = lineageView(compiled!, 'en');
  skulls = drawingsOf(view).flatMap((drawing) => skullDrawing(drawing, view) ?? []);
  folder = await mkdtemp(join(tmpdir(), 'pictures-'));
}, timeout);
afterAll(() => rm(folder, { recursive: true }));

async function timeMs(run: () => Promise<unknown>): Promise<number> {
  const started = performance.now();
  await run();
  return performance.now() - started;
}

/** Times the first run, and the kept runs after it with their quartiles. */
async function coldAndKept(what: string, aims: string, run: () => Promise<unknown>): Promise<void> {
  const before = process.cpuUsage();
  const cold = await timeMs(run);
  const { user, system } = process.cpuUsage(before);
  const busy = ((user + system) / 1e6).toFixed(1);
  const kept: number[] = [];
  for (let index = 0; index < keptRuns; index++) kept.push(await timeMs(run));
  kept.sort((one, other) => one - other);
  const at = (share: number) => kept[Math.floor(share * (keptRuns - 1))]!.toFixed(0);
  console.log(
    `${what}: cold ${(cold / 1000).toFixed(1)} s (${busy} s of processor), kept median ${at(0.5)} ms (quartiles ${at(0.25)}–${at(0.75)}); ${aims}`,
  );
}

test('pictures of every skull in two sizes', { timeout }, async () => {
  const sizes = pictureSizes.map((size) => ({ ...size, box: cardBox(view) }));
  await coldAndKept(`pictures of ${skulls.length} skulls`, 'aims 60 s and 1 s', () =>
    skullPictures(skulls, folder, sizes),
  );
  const mirrored = skulls.filter(({ id }) => isMirrored(id));
  expect(mirrored.length).toBeGreaterThan(0);
  console.log(`of them ${mirrored.length} with a specimen that was turned over`);
});

function isMirrored(id: string): boolean {
  const drawing = drawingsOf(view).find(({ taxon }) => `skull-${taxon}` === id);
  return drawing?.specimens.some((specimen) => view.findSpecimen(specimen)?.mirrored) ?? false;
}

test('the full ink of every skull as lines', { timeout }, async () => {
  await coldAndKept(`lines of ${skulls.length} skulls`, 'part of the same aims', async () => {
    for (const skull of skulls) await keptMarkup(skull, 'hero', folder);
  });
});

test('every size of every photograph', { timeout }, async () => {
  const photographs = lineagePhotographs(view);
  await coldAndKept(`sizes of ${photographs.length} photographs`, 'part of the same aims', async () => {
    for (const { picture } of photographs)
      for (const size of photographSizes(picture))
        await makePicture(join(bundled, picture.file), size, folder);
  });
});

test('what a skull weighs as lines and as a picture', { timeout }, async () => {
  const kilobytes = (weights: readonly number[]) =>
    (weights.reduce((sum, weight) => sum + weight, 0) / weights.length / 1000).toFixed(1);
  const lines = async (quality: 'hero' | 'card') => {
    const markup = await Promise.all(skulls.slice(0, 5).map((skull) => keptMarkup(skull, quality, folder)));
    return kilobytes(markup.map((each) => gzipSync(each).length));
  };
  const picture = async (wish: PictureWish) => {
    const files = await skullPictures(skulls.slice(0, 5), folder, [wish]);
    return kilobytes(await Promise.all(files.map(async ({ file }) => (await stat(file)).size)));
  };
  const [plain, fine] = pictureSizes;
  console.log(
    `focal skull: lines ${await lines('hero')} KB gzip, picture ${await picture({ quality: 'hero', widthPx: 1280 })} KB; card: lines ${await lines('card')} KB gzip, pictures ${await picture(plain!)} and ${await picture(fine!)} KB`,
  );
});
