import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { activeContent, jpegNotes, pictureKind, pngNotes } from '../../../analysis/pictures/index.ts';
import { scaledSize } from '../../../components/measuring/picture/scaled-size.ts';

const blank = { create: { width: 60, height: 40, channels: 3 as const, background: '#a87' } };
const noted = { IFD0: { Copyright: 'nobody' }, IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' } };

/** A picture with notes written by a library of other hands (libvips through sharp). */
const written = (kind: 'jpeg' | 'png', orientation = 1) =>
  sharp(blank).withExif(noted).withMetadata({ orientation }).toFormat(kind).toBuffer();
const bytesOf = (buffer: Buffer) => new Uint8Array(buffer);

describe.each(['jpeg', 'png'] as const)('a %s with the position of its site', (kind) => {
  const notesOf = kind === 'jpeg' ? jpegNotes : pngNotes;

  test('is known by its bytes, with size, position and notes', async () => {
    const bytes = bytesOf(await sharp(blank).withExif(noted).toFormat(kind).toBuffer());
    expect(pictureKind(bytes)).toBe(kind);
    expect(notesOf(bytes)).toMatchObject({
      width: 60,
      height: 40,
      orientation: 1,
      position: true,
      removed: true,
    });
  });

  test('is the same picture to the bit without it, and says nothing any more to other hands', async () => {
    const bytes = await sharp(blank).withExif(noted).toFormat(kind).toBuffer();
    const { clean } = notesOf(bytesOf(bytes))!;
    const metadata = await sharp(clean).metadata();
    expect(metadata.exif).toBeUndefined();
    expect((await sharp(bytes).metadata()).exif).toBeDefined();
    expect((await sharp(clean).raw().toBuffer()).equals(await sharp(bytes).raw().toBuffer())).toBe(true);
    expect(notesOf(clean)).toMatchObject({ position: false, removed: false });
  });

  test.each([1, 3, 6, 8])('tells how it lies: %s', async (orientation) => {
    expect(notesOf(bytesOf(await written(kind, orientation)))!.orientation).toBe(orientation);
  });

  test('that breaks off is no picture, wherever it breaks', async () => {
    const bytes = bytesOf(await written(kind));
    for (const length of [3, 12, 40, 120]) expect(notesOf(bytes.subarray(0, length))).toBeUndefined();
  });
});

test('what hangs behind the end of a JPEG goes: cameras put whole pictures there', async () => {
  const plain = await sharp(blank).jpeg().toBuffer();
  const behind = Buffer.concat([plain, await written('jpeg')]);
  const { clean, removed } = jpegNotes(bytesOf(behind))!;
  expect(removed).toBe(true);
  expect(Buffer.from(clean).equals(plain)).toBe(true);
});

test('a JPEG of several scans keeps them all', async () => {
  const plain = await sharp({
    create: { ...blank.create, noise: { type: 'gaussian', mean: 120, sigma: 40 } },
  })
    .jpeg({ progressive: true })
    .toBuffer();
  expect(Buffer.from(jpegNotes(bytesOf(plain))!.clean).equals(plain)).toBe(true);
});

test.each([
  ['a text', 'not a picture at all'],
  ['a page', '<!doctype html><svg></svg>'],
  ['nothing', ''],
  ['a sheet', 'specimen,repeat\n'],
])('%s is no picture', (_, text) => {
  expect(pictureKind(new TextEncoder().encode(text))).toBeUndefined();
});

test.each([
  ['script', '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'],
  ['script under a prefix', '<svg><s:script/></svg>'],
  ['a handler', '<svg onload="x()"></svg>'],
  ['a page within', '<svg><foreignObject/></svg>'],
  ['a link that runs', '<svg><a href="javascript:x()"/></svg>'],
  ['a picture from elsewhere', '<svg><image href="https://example.org/a.png"/></svg>'],
  ['a style from elsewhere', '<svg><style>@import "a.css"</style></svg>'],
  ['an entity', '<!DOCTYPE svg [<!ENTITY a "b">]><svg>&a;</svg>'],
])('a drawing with %s is active', (_, svg) => {
  expect(activeContent(svg)).toBeDefined();
});

test('a drawing that only draws is not active', () => {
  const svg =
    '<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"><defs><path id="a"/></defs><use href="#a"/><image href="data:image/png;base64,AA"/><rect fill="url(#b)"/></svg>';
  expect(activeContent(svg)).toBeUndefined();
  expect(pictureKind(new TextEncoder().encode(svg))).toBe('svg');
});

test('a picture of up to 100 million px keeps its size, a larger one its proportions', () => {
  expect(scaledSize(10_000, 10_000)).toEqual({ width: 10_000, height: 10_000, scaled: false });
  const { width, height, scaled } = scaledSize(20_000, 10_000);
  expect(scaled).toBe(true);
  expect(width * height).toBeLessThanOrEqual(100_000_000);
  expect(width / height).toBeCloseTo(2, 3);
});
