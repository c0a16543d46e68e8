import { join } from 'node:path';
import type { CompiledDrawing } from '../../scripts/compile/contract.ts';
import { drawSkull } from './skull/draw-skull.ts';
import { limitOutlines } from './skull/limits.ts';
import { SkullFolds } from './skull/place-template.ts';
import type { InkQuality, SkullDrawing } from './skull/skull-drawing.ts';
import { platePalette } from './skull/ink-style.ts';
import { keptMarkup } from './skull/skull-pictures.ts';
import { inkToSvg, skullLayers, skullToSvg, type SkullLayer } from './skull/skull-svg.ts';

/** Where drawn skulls are kept between builds; every command runs in the folder of the project. */
const keptFolder = join(process.cwd(), '.lineament', 'skulls');

/**
 * Layers of a skull, all unless told otherwise, kept by digest between builds. A skull that its template cannot follow without a fold is
 * drawn by straight lines.
 */
export async function inkMarkup(
  skull: SkullDrawing,
  quality: InkQuality,
  layers?: readonly SkullLayer[],
): Promise<string> {
  return keptMarkup(skull, quality, keptFolder, layers).catch((error: unknown) => {
    if (!(error instanceof SkullFolds)) throw error;
    return skullToSvg(drawSkull(skull, quality).picture, layers);
  });
}

/** A drawing by hand, laid into the frame, all of its layers unless told otherwise: its restored parts are hidden and shown with those of diagrams. */
export function ownMarkup(
  { bone, restored, accent, place }: NonNullable<CompiledDrawing['own']>,
  wanted: readonly SkullLayer[] = skullLayers,
): string {
  const group = (layer: SkullLayer, attributes: string, markup: string) =>
    markup === '' || !wanted.includes(layer) ? '' : `<g ${attributes}>${markup}</g>`;
  const layers = [
    group('bone', 'class="skull-own-bone"', bone),
    group('restored', 'class="skull-restored"', restored),
    group('accent', `class="skull-own-accent" fill="${platePalette.accent}"`, accent),
  ];
  return `<g class="skull-own" transform="matrix(${place.map((each) => Number(each.toPrecision(8))).join(' ')})">${layers.join('')}</g>`;
}

/**
 * The outlines at the two ends of what a restored skull can have been, as a group `skull-limits`. Empty where nothing has two
 * ends, and where an end would fold.
 */
export function limitMarkup(skull: SkullDrawing, reading: string, ends: CompiledDrawing['limits']): string {
  if (!ends) return '';
  const shapes = ends.map(({ value, points }) => ({
    value,
    landmarks: {
      ...skull.landmarks,
      ...Object.fromEntries(
        Object.entries(points).map(([id, at]) => [id, { at, basis: 'relatives' as const }]),
      ),
    },
  }));
  try {
    const outlines = limitOutlines(skull, reading, shapes);
    return outlines.length > 0 ? `<g class="skull-limits">${inkToSvg(outlines, 'hero')}</g>` : '';
  } catch (error) {
    if (error instanceof SkullFolds) return '';
    throw error;
  }
}
