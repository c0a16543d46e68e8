import sharp from 'sharp';
import { composeSkull } from './compose-skull.ts';
import { platePalette } from './ink-style.ts';
import type { InkQuality, SkullDrawing } from './skull-drawing.ts';
import { standaloneSvg } from './skull-svg.ts';

/** Goes up when the same drawing would look different: it is part of the digest of every kept picture. */
export const inkEdition = 1;

/**
 * The bone of a skull as a WebP picture on a clear ground: what is restored, the torn edge, the trait and its limits are
 * left to the page, which draws them live on top. Lossy at a quality that keeps single dots; the same drawing gives the
 * same bytes on one version of the rasteriser.
 */
export async function renderSkullRaster(
  drawing: SkullDrawing,
  widthPx: number,
  quality: InkQuality = 'hero',
): Promise<Buffer> {
  const svg = standaloneSvg(composeSkull(drawing, quality), widthPx, ['bone'], platePalette);
  return rasterise(svg);
}

/** An image of its own as WebP. */
export async function rasterise(svg: string): Promise<Buffer> {
  return sharp(Buffer.from(svg)).webp({ quality: 82, alphaQuality: 90, effort: 4 }).toBuffer();
}
