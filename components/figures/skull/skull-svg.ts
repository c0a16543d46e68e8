import type { PlanePoint } from '../../../analysis/geometry/index.ts';
import { fineCoordinate } from '../scene/scene.ts';
import type { SkullPicture } from './compose-skull.ts';
import type { InkQuality } from './skull-drawing.ts';
import { linePath } from './compact-path.ts';
import { type InkShape } from './ink-shape.ts';
import { inkAttributes, inkWeights, platePalette, type InkPalette } from './ink-style.ts';

/** Which layers of a skull are wanted; a raster carries `bone`, the page draws the others live on top of it. */
export type SkullLayer = 'bone' | 'restored' | 'torn' | 'accent';

/** Every layer, from the lowest up. */
export const skullLayers: readonly SkullLayer[] = ['bone', 'restored', 'torn', 'accent'];

/**
 * Layers of a skull as SVG groups `skull-bone`, `skull-restored`, `skull-torn` and `skull-accent` in the drawing frame,
 * to be scaled by the trait's axis. Colours are presentation attributes, so that a style sheet can overrule them by
 * class; there is no `style` and no style sheet inside.
 */
export function skullToSvg(
  picture: SkullPicture,
  layers: readonly SkullLayer[] = skullLayers,
  palette: InkPalette = platePalette,
): string {
  const cuts = layers.includes('bone') ? cutDefinitions(picture) : '';
  return cuts + layers.map((layer) => groupToSvg(picture, layer, palette)).join('');
}

/** Shapes that belong to no layer, as markup: outlines of limits, which are cut to nothing. */
export function inkToSvg(
  shapes: readonly InkShape[],
  quality: InkQuality,
  palette: InkPalette = platePalette,
): string {
  return shapes
    .map(
      ({ role, d }) =>
        `<path class="skull-${role}" ${inkAttributes(role, palette, inkWeights[quality])} d="${d}"/>`,
    )
    .join('');
}

function groupToSvg(picture: SkullPicture, layer: SkullLayer, palette: InkPalette): string {
  const shapes = picture[layer];
  if (shapes.length === 0) return '';
  return `<g class="skull-${layer}">${shapes.map((shape) => shapeToSvg(picture, shape, palette)).join('')}</g>`;
}

function shapeToSvg(
  { id, quality }: SkullPicture,
  { role, d, cutTo }: InkShape,
  palette: InkPalette,
): string {
  const cut = cutTo === undefined ? '' : ` clip-path="url(#${id}-kept-${cutTo})"`;
  return `<path class="skull-${role}" ${inkAttributes(role, palette, inkWeights[quality])}${cut} d="${d}"/>`;
}

/** What is kept of each part: everything but the restored region. */
function cutDefinitions({ id, cuts, placed }: SkullPicture): string {
  if (cuts.size === 0) return '';
  const all = linePath(frameRing(placed.pieces.flatMap((piece) => piece.points)), 'closed');
  const paths = [...cuts].map(
    ([part, rings]) =>
      `<clipPath id="${id}-kept-${part}"><path clip-rule="evenodd" d="${all}${rings.map((ring) => linePath(ring, 'closed')).join('')}"/></clipPath>`,
  );
  return `<defs>${paths.join('')}</defs>`;
}

/** A ring well outside everything drawn. */
function frameRing(points: readonly PlanePoint[]): PlanePoint[] {
  const far = 2 * Math.max(...points.map(([x, y]) => Math.max(Math.abs(x), Math.abs(y)))) + 100;
  return [
    [-far, -far],
    [far, -far],
    [far, far],
    [-far, far],
  ];
}

/** Left, top, width and height of a skull with a little room, as a viewBox. */
export function skullViewBox({ placed }: SkullPicture, room = 3): readonly [number, number, number, number] {
  const points = placed.pieces.flatMap((piece) => piece.points);
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs) - room, Math.min(...ys) - room];
  return [left, top, Math.max(...xs) + room - left, Math.max(...ys) + room - top];
}

/** A skull as an image of its own, for print or a raster; `widthPx` sets its size. */
export function standaloneSvg(
  picture: SkullPicture,
  widthPx: number,
  layers?: readonly SkullLayer[],
  palette?: InkPalette,
): string {
  return boxedSvg(skullToSvg(picture, layers, palette), widthPx, skullViewBox(picture));
}

/** Markup in the drawing frame as an image of its own that shows a part of the frame. */
export function boxedSvg(
  markup: string,
  widthPx: number,
  [left, top, width, height]: readonly [number, number, number, number],
): string {
  const box = [left, top, width, height].map(fineCoordinate).join(' ');
  const heightPx = fineCoordinate((widthPx * height) / width);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${fineCoordinate(widthPx)}" height="${heightPx}" viewBox="${box}">${markup}</svg>`;
}
