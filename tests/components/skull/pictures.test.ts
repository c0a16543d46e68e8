import { createHash } from 'node:crypto';
import { mkdtemp, readdir, readFile, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { composeSkull } from '../../../components/figures/skull/compose-skull.ts';
import { renderSkullRaster } from '../../../components/figures/skull/raster.ts';
import {
  inkEdition,
  keptMarkup,
  pictureDigest,
  skullPictures,
} from '../../../components/figures/skull/skull-pictures.ts';
import { skullToSvg, standaloneSvg } from '../../../components/figures/skull/skull-svg.ts';
import { inventedSkulls } from './fixtures/invented-skulls.ts';

const [whole, broken] = [inventedSkulls[0]!, inventedSkulls[3]!];
const small = [{ quality: 'mini', widthPx: 160 }] as const;
let folder = '';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'skulls-'));
});
afterAll(() => rm(folder, { recursive: true }));

describe('a raster of a skull', () => {
  test('is a WebP picture of the width asked for, on a clear ground, without the accent', async () => {
    const picture = sharp(await renderSkullRaster(whole, 300));
    const { format, width, hasAlpha } = await picture.metadata();
    expect([format, width, hasAlpha]).toEqual(['webp', 300, true]);
    const { data, info } = await picture.ensureAlpha().raw().toBuffer({ resolveWithObject: true });
    expect(data[3]).toBe(0);
    let red = 0;
    for (let at = 0; at < data.length; at += info.channels) if (data[at]! - data[at + 2]! > 90) red++;
    expect(red).toBe(0);
  });

  test('is the same to the byte when made twice', async () => {
    expect(await renderSkullRaster(broken, 200, 'mini')).toEqual(
      await renderSkullRaster(broken, 200, 'mini'),
    );
  });

  test('stays under 64 kB at twice the size of a focal skull', async () => {
    expect((await renderSkullRaster(broken, 1280)).length).toBeLessThan(64_000);
  });
});

describe('kept pictures', () => {
  test('are made once, and taken from the folder afterwards', async () => {
    const first = await skullPictures([whole, broken], folder, small);
    const times = await Promise.all(first.map(async ({ file }) => (await stat(file)).mtimeMs));
    const again = await skullPictures([whole, broken], folder, small);
    expect(again).toEqual(first);
    expect(await Promise.all(again.map(async ({ file }) => (await stat(file)).mtimeMs))).toEqual(times);
    expect(first.map(({ drawing }) => drawing)).toEqual(['fen-hog', 'broken-snout']);
  });

  test('say where they lie in the drawing frame', async () => {
    const [picture] = await skullPictures([whole], folder, small);
    const [left, top, width, height] = picture!.box;
    const { width: wide, height: high } = await sharp(await readFile(picture!.file)).metadata();
    expect(wide! / high!).toBeCloseTo(width / height, 1);
    expect(left).toBeLessThan(0);
    expect(left + width).toBeGreaterThan(200);
    expect(top).toBeLessThan(-60);
  });

  test('hold the markup of every layer too, the same cold and kept', async () => {
    const cold = await keptMarkup(broken, 'mini', folder);
    expect(await keptMarkup(broken, 'mini', folder)).toBe(cold);
    expect(cold).toBe(skullToSvg(composeSkull(broken, 'mini')));
    const inferred = { ...broken, accent: { piece: 'nasal-opening', status: 'inferred' } } as const;
    expect(await keptMarkup(inferred, 'mini', folder)).not.toBe(cold);
  });

  test('leave no half-written file behind', async () => {
    await skullPictures([whole], folder, small);
    expect((await readdir(folder)).filter((name) => name.endsWith('.draft'))).toEqual([]);
  });

  test('have a digest that a moved landmark changes, and the state of the accent does not', () => {
    const digest = pictureDigest(whole, 'mini', 160);
    const bregma = { at: [138, -58.5], basis: 'digitised' } as const;
    const moved = { ...whole, landmarks: { ...whole.landmarks, bregma } };
    expect(pictureDigest(moved, 'mini', 160)).not.toBe(digest);
    expect(pictureDigest(whole, 'mini', 161)).not.toBe(digest);
    expect(
      pictureDigest({ ...whole, accent: { piece: 'nasal-opening', status: 'inferred' } }, 'mini', 160),
    ).toBe(digest);
  });
});

describe('the edition of the ink', () => {
  test('goes up whenever the same drawing comes out otherwise, so that no stale picture is kept', () => {
    const drawn = (['hero', 'card', 'mini'] as const).map((quality) =>
      standaloneSvg(composeSkull(broken, quality), 900, ['bone']),
    );
    const digest = createHash('sha256').update(drawn.join('')).digest('hex').slice(0, 12);
    expect(`${inkEdition} ${digest}`).toMatchInlineSnapshot(`"3 f7bbc2165068"`);
  });
});
