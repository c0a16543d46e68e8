import { mkdtemp, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { makePicture } from '../../../components/photographs/make-picture.ts';
import { overlayMarkup } from '../../../components/photographs/overlay.ts';
import { pictureSizes } from '../../../components/photographs/picture-sizes.ts';
import type { CompiledPicture } from '../../../scripts/compile/contract.ts';

const picture: CompiledPicture = {
  file: 'images/Skull of Näna.jpg',
  width: 1200,
  height: 800,
  digest: 'abcdef012345',
  alt: { en: 'a skull' },
  credit: 'nobody',
  licence: 'CC0-1.0',
  marks: {
    landmarks: [
      { id: 'snout-tip', at: [100, 400] },
      { id: 'eye-front', at: [500.04, 300] },
    ],
    breaks: [
      {
        landmark: 'chin',
        points: [
          [90, 500],
          [95, 540],
        ],
      },
    ],
    scale: { from: [300, 760], to: [100, 760], mm: 50 },
    mmPerPx: 0.25,
    mirrored: false,
  },
};
const words = {
  name: (id: string) => `<${id}>`,
  measured: new Set(['eye-front']),
  bar: (mm: number) => `${mm} mm`,
};

describe('the sizes of a picture', () => {
  test('are none wider than the picture, and end with one that every browser shows', () => {
    expect(pictureSizes(picture).map(({ widthPx, kind }) => [widthPx, kind])).toEqual([
      [480, 'webp'],
      [960, 'webp'],
      [1200, 'webp'],
      [960, 'jpeg'],
    ]);
    expect(
      pictureSizes({ ...picture, width: 300, file: 'a.png' }).map(({ widthPx, kind }) => [widthPx, kind]),
    ).toEqual([
      [300, 'webp'],
      [300, 'png'],
    ]);
  });

  test('have names that change with the file and that every server takes', () => {
    expect(pictureSizes(picture)[0]!.name).toBe('Skull-of-Na-na.abcdef012345.480.webp');
  });
});

describe('a size that is made', () => {
  let folder = '';
  let file = '';
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'photographs-'));
    file = join(folder, 'noted.jpg');
    // 40 wide and 90 high in the file, turned: 90 wide and 40 high as it is seen
    const noted = sharp({ create: { width: 40, height: 90, channels: 3, background: '#a87' } })
      .withExif({ IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' } })
      .withMetadata({ orientation: 6 });
    await writeFile(file, await noted.jpeg().toBuffer());
  });
  afterAll(() => rm(folder, { recursive: true }));

  test.each(['webp', 'jpeg', 'png'] as const)(
    'is upright and says nothing of its camera: %s',
    async (kind) => {
      const made = await makePicture(file, { name: `a.${kind}`, widthPx: 45, kind }, folder);
      const { width, height, exif, xmp, orientation } = await sharp(made).metadata();
      expect([width, height]).toEqual([45, 20]);
      expect([exif, xmp, orientation ?? 1]).toEqual([undefined, undefined, 1]);
      expect(made.includes('GPS')).toBe(false);
    },
  );

  test('is made once, and taken from the folder afterwards', async () => {
    const size = { name: 'b.webp', widthPx: 45, kind: 'webp' } as const;
    const first = await makePicture(file, size, folder);
    const { mtimeMs } = await stat(join(folder, size.name));
    expect((await makePicture(file, size, folder)).equals(first)).toBe(true);
    expect((await stat(join(folder, size.name))).mtimeMs).toBe(mtimeMs);
  });
});

describe('the overlay of a picture', () => {
  test('has a point where each landmark was placed, with its name, numbered in the order of the list', () => {
    const markup = overlayMarkup(picture, 'numbered', words);
    expect(markup).toContain('<title>&lt;snout-tip&gt;</title><circle class="photo-point" cx="100" cy="400"');
    expect(markup).toContain('class="photo-point photo-measured" cx="500" cy="300"');
    expect([...markup.matchAll(/photo-number"[^>]*>(\d+)</g)].map(([, number]) => number)).toEqual([
      '1',
      '2',
    ]);
  });

  test('has no numbers where it is small', () => {
    const markup = overlayMarkup(picture, 'dots', words);
    expect(markup).not.toContain('photo-number');
    expect(markup).toContain('<path class="photo-spots" d="M100 400h0M500 300h0"/>');
    expect(markup).toContain('<path class="photo-spots-measured" d="M500 300h0"/>');
  });

  test('lays a bar over the bar of the picture from left to right, with its length where there is room', () => {
    const markup = overlayMarkup(picture, 'numbered', words);
    expect(markup).toContain('M100 760L300 760');
    expect(/text-anchor="start" x="([\d.]+)"/.exec(markup)![1]).toBe('313.5');
    const atTheRight = { ...picture.marks!, scale: { from: [900, 760], to: [1150, 760], mm: 50 } } as const;
    expect(
      overlayMarkup({ ...picture, marks: structuredClone(atTheRight) as never }, 'dots', words),
    ).toContain('text-anchor="end"');
  });

  test('shows a break', () => {
    expect(overlayMarkup(picture, 'dots', words)).toContain('<path class="photo-break" d="M90 500L95 540"/>');
  });

  test('is nothing where nothing was placed', () => {
    const { marks: _, ...plain } = picture;
    expect(overlayMarkup(plain, 'dots', words)).toBe('');
  });
});
