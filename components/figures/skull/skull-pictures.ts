import { createHash } from 'node:crypto';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { composeSkull, type SkullPicture } from './compose-skull.ts';
import { rasterise } from './raster.ts';
import type { InkQuality, SkullDrawing } from './skull-drawing.ts';
import { boxedSvg, skullLayers, skullToSvg, skullViewBox, type SkullLayer } from './skull-svg.ts';

/** Goes up when the same drawing comes out otherwise: it is part of the digest under which pictures are kept. */
export const inkEdition = 3;

/** One size of picture; with a box it shows that part of the drawing frame, so that skulls of one lineage line up. */
export interface PictureWish {
  readonly quality: InkQuality;
  readonly widthPx: number;
  readonly box?: SkullPictureFile['box'];
}

/** The kept pictures: a skull on a card, for a plain screen and for a fine one. */
export const pictureSizes: readonly PictureWish[] = [
  { quality: 'card', widthPx: 480 },
  { quality: 'card', widthPx: 960 },
];

/** One kept picture of the bone of a skull. */
export interface SkullPictureFile {
  readonly drawing: string;
  readonly quality: InkQuality;
  /** Name that changes with the picture. */
  readonly name: string;
  readonly file: string;
  /** Left, top, width and height of the picture in the drawing frame. */
  readonly box: readonly [number, number, number, number];
}

/**
 * Pictures of skulls in every size, from a folder where they are kept by digest, made where they are not there yet. Cold it
 * takes about a second a skull; kept ones are not even composed. Throws where a drawing folds.
 */
export async function skullPictures(
  drawings: readonly SkullDrawing[],
  folder: string,
  sizes = pictureSizes,
): Promise<SkullPictureFile[]> {
  await mkdir(folder, { recursive: true });
  const files: SkullPictureFile[] = [];
  for (const drawing of drawings) {
    const compose = composeOnce(drawing);
    for (const wish of sizes) files.push(await keptPicture(drawing, wish, folder, compose));
  }
  return files;
}

async function keptPicture(
  drawing: SkullDrawing,
  { quality, widthPx, box: wanted }: PictureWish,
  folder: string,
  compose: (quality: InkQuality) => SkullPicture,
): Promise<SkullPictureFile> {
  const name = `${drawing.id}.${quality}.${pictureDigest(drawing, quality, widthPx, wanted)}`;
  const [file, boxFile] = [join(folder, `${name}.webp`), join(folder, `${name}.json`)];
  const box = await readKept<SkullPictureFile['box']>(boxFile);
  if (box) return { drawing: drawing.id, quality, name, file, box };
  const picture = compose(quality);
  const shown = wanted ?? skullViewBox(picture);
  await writeWhole(file, await rasterise(boxedSvg(skullToSvg(picture, ['bone']), widthPx, shown)));
  // The box is written last: where it stands, the picture is whole.
  await writeWhole(boxFile, JSON.stringify(shown));
  return { drawing: drawing.id, quality, name, file, box: shown };
}

/** Composes a skull, once for all sizes of one quality. */
function composeOnce(drawing: SkullDrawing): (quality: InkQuality) => SkullPicture {
  const composed = new Map<InkQuality, SkullPicture>();
  return (quality) => {
    const picture = composed.get(quality) ?? composeSkull(drawing, quality);
    composed.set(quality, picture);
    return picture;
  };
}

/**
 * Layers of a skull as markup, all unless told otherwise, from the same folder: for a page that draws it live, and for print.
 * Cold it takes about half a second in full ink.
 */
export async function keptMarkup(
  drawing: SkullDrawing,
  quality: InkQuality,
  folder: string,
  layers: readonly SkullLayer[] = skullLayers,
): Promise<string> {
  const file = join(folder, `${drawing.id}.${quality}.${digestOf([quality, drawing])}.layers.json`);
  let kept = await readKept<Record<SkullLayer, string>>(file);
  if (!kept) {
    const picture = composeSkull(drawing, quality);
    const markup = (layer: SkullLayer) => skullToSvg(picture, [layer]);
    kept = {
      bone: markup('bone'),
      restored: markup('restored'),
      torn: markup('torn'),
      accent: markup('accent'),
    };
    await mkdir(folder, { recursive: true });
    await writeWhole(file, JSON.stringify(kept));
  }
  const found = kept;
  return layers.map((layer) => found[layer]).join('');
}

/** Digest of all that a picture shows: twelve hexadecimal digits of SHA-256. */
export function pictureDigest(
  drawing: SkullDrawing,
  quality: InkQuality,
  widthPx: number,
  box?: SkullPictureFile['box'],
): string {
  // The accent is drawn live and is no part of the picture.
  return digestOf([quality, widthPx, { ...drawing, accent: undefined }, ...(box ? [box] : [])]);
}

function digestOf(shown: readonly unknown[]): string {
  return createHash('sha256')
    .update(JSON.stringify([inkEdition, ...shown]))
    .digest('hex')
    .slice(0, 12);
}

/** What was kept in a file, which this room alone writes, and in whole; undefined where nothing was. */
async function readKept<Kept>(file: string): Promise<Kept | undefined> {
  const text = await readFile(file, 'utf8').catch(() => undefined);
  return text === undefined ? undefined : (JSON.parse(text) as Kept);
}

async function writeWhole(file: string, content: Buffer | string): Promise<void> {
  const draft = `${file}.${process.pid}.draft`;
  await writeFile(draft, content);
  await rename(draft, file);
}
