import { glyph } from '../../../figures/scene/glyphs.ts';
import type { Mark, Scene } from '../../../figures/scene/scene.ts';
import { shapeToSvg } from '../../../figures/scene/svg.ts';
import { pictureSize } from './address.ts';
import type { CardWords } from './card-words.ts';
import type { Pen } from '../../../figures/letters.ts';
import { setLines } from './set-lines.ts';

export interface Pens {
  serif: Pen;
  sans: Pen;
  strong: Pen;
}

/** Where things stand on the picture, in pixels. */
const sheet = { x: 588, y: 36, width: 576, height: 558 };
const words = { x: 60, width: 476, top: 122, bottom: 590, row: 36 };

/** Room for the figure on its sheet. */
export const figureSize = { width: 536, height: 480, markScale: 1.15, whiskers: true };

/**
 * The picture of one page as SVG without any text element. Words that no face has all letters for are left out whole:
 * a picture with less on it is better than one with boxes.
 */
export function composeCard(says: CardWords, figure: Scene | undefined, pens: Pens, style: string): string {
  const { width, height } = pictureSize;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">`,
    `<style>${style}</style>`,
    `<rect class="ground" width="${width}" height="${height}"/>`,
    `<rect class="sheet" x="${sheet.x}" y="${sheet.y}" width="${sheet.width}" height="${sheet.height}"/>`,
    tag(says, pens),
    headline(says, pens),
    counts(says, pens),
    figure ? drawn(figure, says, pens) : '',
    figure ? caption(says, pens) : '',
    '</svg>',
  ].join('');
}

/** A line in the first of these hands that has all its letters; nothing where none has. */
function written(
  text: string,
  x: number,
  y: number,
  size: number,
  role: string,
  hands: readonly Pen[],
): string {
  const pen = hands.find((each) => each.covers(text));
  return pen && text ? `<path class="${role}" d="${pen.outline(text, x, y, size)}"/>` : '';
}

function tag({ invented }: CardWords, { sans }: Pens): string {
  if (!invented || !sans.covers(invented)) return '';
  const end = words.x + sans.width(invented, 22);
  return `${written(invented, words.x, 76, 22, 'second', [sans])}<path class="dotted" d="M${words.x} 88H${end.toFixed(2)}"/>`;
}

/** Title and question together, as large as the room above the counts lets them be. */
function headline({ title, question, counts: rows }: CardWords, { serif, sans }: Pens): string {
  const bottom = words.bottom - rows.length * words.row - 20;
  const pen = [serif, sans].find((each) => each.covers(title));
  const asked = sans.covers(question) ? question : '';
  const questionLines = setLines(asked, sans.width, {
    width: words.width,
    height: 120,
    leading: 1.3,
    sizes: [28, 25],
  });
  const questionHeight = asked ? questionLines.lines.length * questionLines.size * 1.3 + 24 : 0;
  const titleLines = pen
    ? setLines(title, pen.width, {
        width: words.width,
        height: bottom - words.top - questionHeight,
        leading: 1.05,
        sizes: [76, 68, 60, 52, 46, 40],
      })
    : { lines: [], size: 40 };
  const lower = words.top + titleLines.lines.length * titleLines.size * 1.05 + 24;
  return [
    ...titleLines.lines.map((line, index) =>
      written(line, words.x, words.top + titleLines.size * (0.8 + index * 1.05), titleLines.size, 'ink', [
        serif,
        sans,
      ]),
    ),
    ...questionLines.lines.map((line, index) =>
      written(line, words.x, lower + questionLines.size * (0.8 + index * 1.3), questionLines.size, 'second', [
        sans,
      ]),
    ),
  ].join('');
}

function counts({ counts: rows }: CardWords, { sans }: Pens): string {
  return rows
    .map(({ status, text }, index) => {
      const y = words.bottom - 10 - (rows.length - 1 - index) * words.row;
      const mark = glyph(status, words.x + 11, y - 8, 1.4).map((part): Mark => ({ layer: '', ...part }));
      return `<g class="plate">${marks(mark, sans)}</g>${written(text, words.x + 38, y, 23, 'ink', [sans])}`;
    })
    .join('');
}

function drawn(figure: Scene, { today }: CardWords, { sans, strong }: Pens): string {
  const x = sheet.x + (sheet.width - figure.width) / 2;
  const y = sheet.y + 24;
  const line = figure.marks.find(({ role }) => role === 'age-line')?.shape;
  const height = Number(line?.kind === 'path' ? /^M[\d.]+ ([\d.]+)/.exec(line.d)?.[1] : NaN);
  const middle = sheet.x + sheet.width / 2;
  const label = Number.isFinite(height)
    ? written(today, middle - sans.width(today, 18) / 2, y + height - 8, 18, 'second', [sans])
    : '';
  return `${label}<g class="plate" transform="translate(${x} ${y})">${marks(figure.marks, strong)}</g>`;
}

function caption({ caption: content }: CardWords, { sans }: Pens): string {
  return written(content, sheet.x + 32, sheet.y + sheet.height - 24, 20, 'second', [sans]);
}

/** Marks as they stand in the figure, their few letters as outlines. */
function marks(list: readonly Mark[], pen: Pen): string {
  return list
    .map(({ role, shape }) => {
      if (shape.kind !== 'text') return shapeToSvg(shape, role);
      const text = shape.runs.map((run) => run.text).join('');
      const back =
        shape.anchor === 'start' ? 0 : pen.width(text, shape.size) / (shape.anchor === 'middle' ? 2 : 1);
      return written(text, shape.x - back, shape.y, shape.size, 'ink', [pen]);
    })
    .join('');
}
