import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { activeContent, jpegNotes, pictureKind, pngNotes } from '../../../analysis/pictures/index.ts';
import type { LineageFolder } from './files.ts';
import { sizeOf, type PictureSize } from './picture-size.ts';

/** What a picture is, by its bytes. Width and height are those of the picture as it is seen, upright. */
export interface PictureFile extends PictureSize {
  /** The camera wrote down where the picture was taken. */
  position: boolean;
  /** What in a drawing could run or reach out; undefined for one that only draws. */
  active: string | undefined;
  /** Twelve hexadecimal digits of SHA-256 of the file. */
  digest: string;
}

const endings = /\.(png|jpe?g|webp|avif|gif|bmp|svg)$/i;

/** The pictures of a folder by path. A file that ends like a picture and is none, or breaks off, is left out. */
export async function pictureFiles(folder: LineageFolder): Promise<Map<string, PictureFile>> {
  const files = new Map<string, PictureFile>();
  for (const file of folder.files.filter((each) => endings.test(each))) {
    const picture = pictureFile(await readFile(join(folder.path, file)));
    if (picture) files.set(file, picture);
  }
  return files;
}

/** The picture that some bytes are; undefined where they are none, break off, or have no size. */
export function pictureFile(bytes: Buffer): PictureFile | undefined {
  const kind = pictureKind(bytes);
  const notes = kind === 'jpeg' ? jpegNotes(bytes) : kind === 'png' ? pngNotes(bytes) : undefined;
  const size = kind === 'jpeg' || kind === 'png' ? notes && uprightSize(notes) : kind && sizeOf(bytes);
  if (!size || !(size.width > 0 && size.height > 0)) return undefined;
  return {
    ...size,
    position: notes?.position ?? false,
    active: kind === 'svg' ? activeContent(bytes.toString('utf8')) : undefined,
    digest: createHash('sha256').update(bytes).digest('hex').slice(0, 12),
  };
}

/** Orientations from 5 on lie on their side (Exif 2.32, tag 0x0112). */
function uprightSize({ width, height, orientation }: PictureSize & { orientation: number }): PictureSize {
  return orientation >= 5 ? { width: height, height: width } : { width, height };
}
