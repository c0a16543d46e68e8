import { join } from 'node:path';
import { readFile } from 'node:fs/promises';
import type { CompiledDrawing } from '../../scripts/compile/contract.ts';
import { penFor, sans, type Pen } from './letters.ts';
import type { LineageView } from '../lineage/view.ts';
import { barLengthMm } from './scene/scale-bar.ts';
import { drawSkull } from './skull/draw-skull.ts';
import { platePalette, printPalette, type InkPalette } from './skull/ink-style.ts';
import { SkullFolds } from './skull/place-template.ts';
import { rasterise } from './skull/raster.ts';
import { pictureSizes, skullPictures } from './skull/skull-pictures.ts';
import { boxedSvg, skullToSvg, type SkullLayer } from './skull/skull-svg.ts';
import { drawingsOf, skullDrawing } from './skull-figures.ts';
import { isFragment } from './skull-found.ts';
import { ownMarkup } from './skull-markup.ts';

type Box = readonly [left: number, top: number, width: number, height: number];

/** Width of a card's picture on a plain screen, and on a fine one. */
export const [cardWidthPx, fineCardWidthPx] = pictureSizes.map(({ widthPx }) => widthPx) as [number, number];
/** Size of a bar's letters, in units of the frame. */
const barLetters = 7.5;
/** Room for what reaches beyond the landmarks, and below it for the bar. */
const room = { side: 9, below: 22 };
const keptFolder = join(process.cwd(), '.lineament', 'skulls');

/** What of the frame every card of a lineage shows: one box for all, so that eyes and tooth rows line up from card to card. */
export function cardBox(view: LineageView): Box {
  const places = drawingsOf(view).flatMap(({ points }) => Object.values(points).map(({ at }) => at));
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  const [left, top] = [Math.floor(Math.min(...xs)) - room.side, Math.floor(Math.min(...ys)) - room.side];
  return [
    left,
    top,
    Math.ceil(Math.max(...xs)) + room.side - left,
    Math.ceil(Math.max(...ys)) + room.below - top,
  ];
}

/** The bone of one skull as a WebP picture on a clear ground, kept by digest; undefined for an animal without a drawing. */
export async function cardRaster(
  view: LineageView,
  taxon: string,
  widthPx = cardWidthPx,
): Promise<Buffer | undefined> {
  const found = findDrawing(view, taxon);
  const skull = found && skullDrawing(found, view);
  if (!skull) return undefined;
  const box = cardBox(view);
  if (found.own) return rasterise(boxedSvg(ownMarkup(found.own, ['bone']), widthPx, box));
  try {
    const wishes = pictureSizes.map((size) => ({ ...size, box }));
    const pictures = await skullPictures([skull], keptFolder, wishes);
    return await readFile(pictures[wishes.findIndex((wish) => wish.widthPx === widthPx)]!.file);
  } catch (error) {
    if (!(error instanceof SkullFolds)) throw error;
    return rasterise(boxedSvg(skullToSvg(drawSkull(skull, 'card').picture, ['bone']), widthPx, box));
  }
}

/**
 * What lies over the picture of a card, as an image of its own: restored parts, the torn edge, the anatomy of the trait, and
 * the bar of millimetres. Of a fragment nothing restored is shown.
 */
export function cardOverlay(view: LineageView, taxon: string): Promise<string | undefined> {
  return cardSvg(view, taxon, platePalette, ['restored', 'torn', 'accent']);
}

/** The whole of a card's skull in black lines, for paper. */
export function cardPrint(view: LineageView, taxon: string): Promise<string | undefined> {
  return cardSvg(view, taxon, printPalette, ['bone', 'restored', 'torn', 'accent']);
}

async function cardSvg(
  view: LineageView,
  taxon: string,
  palette: InkPalette,
  layers: readonly SkullLayer[],
): Promise<string | undefined> {
  const found = findDrawing(view, taxon);
  const skull = found && skullDrawing(found, view);
  if (!skull) return undefined;
  const box = cardBox(view);
  const isShown = (layer: SkullLayer) =>
    !isFragment(view, found) ||
    (layer !== 'restored' && !(layer === 'accent' && skull.accent?.status === 'inferred'));
  const markup = found.own
    ? ownMarkup(found.own, layers)
    : skullToSvg(drawSkull(skull, 'card').picture, layers.filter(isShown), palette);
  const style = palette === platePalette ? overStyle : '';
  return boxedSvg(style + markup + (await barMarkup(found.mmPerUnit, box, palette)), cardWidthPx, box);
}

function findDrawing(view: LineageView, taxon: string): CompiledDrawing | undefined {
  return drawingsOf(view).find((drawing) => drawing.taxon === taxon);
}

/** By night what is restored, and the bar, stand on dark ground; an image follows the colour scheme of its page. */
const overStyle =
  '<style>@media (prefers-color-scheme:dark){.skull-ruling,.skull-dash,.skull-dash-thin,.own-stroke-ink,.bar-line{stroke:#b9c4bf}.own-fill-ink,.bar-words{fill:#b9c4bf}}</style>';

/** Letters of a bar as outlines: an image has none of the page's faces. One pen serves every card. */
let barPen: Promise<Pen> | undefined;

async function barMarkup(
  mmPerUnit: number | undefined,
  [left, top, width, height]: Box,
  { ink }: InkPalette,
): Promise<string> {
  const lengthMm = mmPerUnit === undefined ? undefined : barLengthMm(mmPerUnit * 60);
  if (mmPerUnit === undefined || lengthMm === undefined) return '';
  const [end, y] = [left + width - room.side, top + height - 5];
  const start = end - lengthMm / mmPerUnit;
  const pen = await (barPen ??= penFor(sans, ['0123456789 m']));
  const words = `${lengthMm} mm`;
  const letters = pen.outline(words, (start + end - pen.width(words, barLetters)) / 2, y - 4, barLetters);
  return `<path class="bar-line" d="M${start} ${y}H${end}M${start} ${y - 2}v4M${end} ${y - 2}v4" fill="none" stroke="${ink}" stroke-width="1.1"/><path class="bar-words" data-mm="${lengthMm}" fill="${ink}" d="${letters}"/>`;
}
