import sharp from 'sharp';
import { expect, test } from 'vitest';
import { pictureFile } from '../../scripts/compile/read/picture-file.ts';

const picture = () => sharp({ create: { width: 37, height: 21, channels: 3, background: '#678' } });

// Written by libvips, which other hands made: the sizes are what it was asked for.
test.each(['png', 'jpeg', 'webp', 'avif', 'gif'] as const)(
  'the size of a %s is read from its file',
  async (kind) => {
    expect(pictureFile(await picture().toFormat(kind).toBuffer())).toMatchObject({ width: 37, height: 21 });
  },
);

test.each([
  ['its box', '<svg viewBox="0 0 37 21"/>'],
  ['its size', '<svg width="37" height="21"/>'],
])('the size of a drawing is %s', (_, text) => {
  expect(pictureFile(Buffer.from(text))).toMatchObject({ width: 37, height: 21, active: undefined });
});

test.each([
  ['a text', 'a,b\n1,2\n'],
  ['nothing', ''],
  ['a drawing without a size', '<svg xmlns="http://www.w3.org/2000/svg"/>'],
])('%s is no picture', (_, text) => {
  expect(pictureFile(Buffer.from(text))).toBeUndefined();
});
