import sharp from 'sharp';
import { composeSkull } from './compose-skull.ts';
import type { InkQuality, SkullDrawing } from './skull-drawing.ts';
import { standaloneSvg } from './skull-svg.ts';

/** Inks, paper and the steps between them at an edge: more colours double the size and look the same. */
const colours = 16;

/**
 * The bone of a skull as a WebP picture on a clear ground, `widthPx` wide: what is restored, the torn edge, the trait and
 * its limits are left to the page, which draws them live on top. The same drawing gives the same bytes on one version
 * of the rasteriser. Throws where the drawing folds.
 */
export async function renderSkullRaster(
  drawing: SkullDrawing,
  widthPx: number,
  quality: InkQuality = 'hero',
): Promise<Buffer> {
  return rasterise(standaloneSvg(composeSkull(drawing, quality), widthPx, ['bone']));
}

/** An image of its own as WebP: few colours and no loss, which for ink is half the size of a lossy one. */
export async function rasterise(svg: string): Promise<Buffer> {
  const fewColours = await sharp(Buffer.from(svg)).png({ palette: true, colours, dither: 0 }).toBuffer();
  return sharp(fewColours).webp({ lossless: true, effort: 4 }).toBuffer();
}
