import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import type { PictureSize } from './picture-sizes.ts';

/**
 * One size of a picture: upright, in the colours of screens, without anything that its camera wrote. Taken from the folder
 * where it was kept under its name, which changes with the file.
 */
export async function makePicture(file: string, size: PictureSize, folder: string): Promise<Buffer> {
  const path = join(folder, size.name);
  const kept = await readFile(path).catch(() => undefined);
  if (kept) return kept;
  const made = await resized(file, size);
  await mkdir(folder, { recursive: true });
  const draft = `${path}.${process.pid}.draft`;
  await writeFile(draft, made);
  await rename(draft, path);
  return made;
}

async function resized(file: string, { widthPx, kind }: PictureSize): Promise<Buffer> {
  // A picture of 100 megapixels is well within what fits in memory; larger ones are refused by the library itself.
  const picture = sharp(file)
    .rotate()
    .resize({ width: widthPx, withoutEnlargement: true })
    .toColourspace('srgb');
  if (kind === 'webp') return picture.webp({ quality: 80, effort: 4 }).toBuffer();
  if (kind === 'jpeg') return picture.jpeg({ quality: 80, mozjpeg: true }).toBuffer();
  return picture.png({ palette: true, effort: 7 }).toBuffer();
}
