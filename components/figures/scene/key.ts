import type { Status } from '../../../scripts/compile/contract.ts';
import { glyph } from './glyphs.ts';
import { overlap, type Box } from './label-slots.ts';
import type { PlateLayout } from './layout.ts';
import { ruling } from './ruling.ts';
import { path, wrap, type Mark, type Shape, type TextRun } from './scene.ts';

/** A word for each status and what stands behind it, in the page's language. */
export type KeyWords = Record<Status | 'bar' | 'bed', KeyRow> & {
  /** Only where a branch is dashed. */
  ghost?: KeyRow;
};

interface KeyRow {
  word: string;
  note: string;
}

/** Room between two rows whose words take several lines, in sizes of the letters. */
const rowGap = 0.65;

/**
 * The key: each mark as it stands in the chart, its word, and what it rests on. Empty where a layout has no room. Where words
 * called up by a step would lie on it, it gives way while they show.
 */
export function key(layout: PlateLayout, words: KeyWords, calledUp: readonly Box[] = []): Mark[] {
  const box = keyBox(layout, words);
  const marks = keyMarks(layout, words);
  if (!box || !calledUp.some((called) => overlap(box, called))) return marks;
  return marks.map((mark) => ({ ...mark, role: `${mark.role} gives-way` }));
}

function keyMarks(layout: PlateLayout, words: KeyWords): Mark[] {
  const place = layout.key;
  if (!place) return [];
  const { fontSize: size, markScale: scale } = layout;
  let y = place.y;
  return rowsOf(words).flatMap((row): Mark[] => {
    const lines = linesOf(words[row]!, layout);
    const marks = lines.map((runs, index): Mark => {
      const at = { x: place.x + 46 * scale, y: y + size * 0.34 + index * place.lineHeight };
      return { layer: 'key', role: 'key-word', shape: { kind: 'text', ...at, size, anchor: 'start', runs } };
    });
    const sample = sampleOf(row, place.x + 18 * scale, y, scale);
    y += lines.length * place.lineHeight + gapOf(layout);
    return [...sample, ...marks];
  });
}

/** The room that the key takes. */
export function keyBox(layout: PlateLayout, words: KeyWords): Box | undefined {
  const place = layout.key;
  if (!place) return undefined;
  const heights = rowsOf(words).map(
    (row) => linesOf(words[row]!, layout).length * place.lineHeight + gapOf(layout),
  );
  const top = place.y - place.lineHeight / 2;
  const bottom = top + heights.reduce((sum, height) => sum + height, 0);
  return { left: place.x - 10, right: place.x + place.width, top, bottom };
}

function rowsOf(words: KeyWords): (keyof KeyWords)[] {
  const rows = ['measured', 'bounded', 'inferred', 'unknown', 'bar', 'bed', 'ghost'] as const;
  return rows.filter((row) => words[row]);
}

function gapOf({ key: place, fontSize }: PlateLayout): number {
  return place?.wrapped ? fontSize * rowGap : 0;
}

/** A word and its note: on one line, or broken over several where the key is narrow. */
function linesOf({ word, note }: KeyRow, { key: place, fontSize, markScale }: PlateLayout): TextRun[][] {
  const whole: TextRun[] = [
    { text: word, voice: 'strong' },
    { text: ` ${note}`, voice: 'plain' },
  ];
  if (!place?.wrapped) return [whole];
  const [first = '', ...others] = wrap(
    `${word} ${note}`,
    Math.floor((place.width - 46 * markScale) / (fontSize * 0.48)),
  );
  const opening: TextRun[] = first.startsWith(word)
    ? [
        { text: word, voice: 'strong' },
        { text: first.slice(word.length), voice: 'plain' },
      ]
    : [{ text: first, voice: 'strong' }];
  return [opening, ...others.map((text): TextRun[] => [{ text, voice: 'plain' }])];
}

function sampleOf(row: keyof KeyWords, x: number, y: number, scale: number): Mark[] {
  if (row === 'bar' || row === 'bed') return barSample(row, x, y, scale);
  if (row !== 'ghost') return statusSample(row, x, y, scale);
  const d = path`M${x - 14 * scale} ${y}H${x + 14 * scale}`;
  return [{ layer: 'key', role: 'branch', shape: { kind: 'path', d, dashes: '2.6 5' } }];
}

function statusSample(status: Status, x: number, y: number, scale: number): Mark[] {
  const before: [string, Shape][] = [];
  if (status === 'measured') before.push(['whisker', { kind: 'path', d: whisker(x, y, scale) }]);
  if (status === 'inferred') {
    const [width, height] = [30 * scale, 14 * scale];
    before.push([
      'ruled',
      { kind: 'path', d: ruling(x - width / 2, y - height / 2, width, height, 5 * scale) },
    ]);
    before.push(['bracket', { kind: 'path', d: brackets(x, y, scale) }]);
  }
  if (status === 'bounded') before.push(['arrow', { kind: 'path', d: path`M${x} ${y}H${x + 13 * scale}` }]);
  if (status === 'bounded')
    before.push([
      'arrow-head',
      {
        kind: 'path',
        d: path`M${x + 9 * scale} ${y - 3.4 * scale}L${x + 13 * scale} ${y}L${x + 9 * scale} ${y + 3.4 * scale}`,
      },
    ]);
  const centre = status === 'bounded' ? x - 5 * scale : x;
  return [
    ...before,
    ...glyph(status, centre, y, scale).map((part): [string, Shape] => [part.role, part.shape]),
  ].map(([role, shape]): Mark => ({ layer: 'key', role, shape }));
}

function barSample(row: 'bar' | 'bed', x: number, y: number, scale: number): Mark[] {
  const bar: Shape = {
    kind: 'rect',
    x: x - 2.5 * scale,
    y: y - 8 * scale,
    width: 5 * scale,
    height: 14 * scale,
  };
  if (row === 'bed') return [{ layer: 'key', role: 'one-bed', shape: bar }];
  return [
    { layer: 'key', role: 'find-bar', shape: bar },
    {
      layer: 'key',
      role: 'cap',
      shape: { kind: 'path', d: path`M${x - 5.5 * scale} ${y - 8 * scale}H${x + 5.5 * scale}` },
    },
  ];
}

function whisker(x: number, y: number, scale: number): string {
  const reach = 13 * scale;
  const tick = 3.6 * scale;
  return path`M${x - reach} ${y}H${x + reach}M${x - reach} ${y - tick}V${y + tick}M${x + reach} ${y - tick}V${y + tick}`;
}

function brackets(x: number, y: number, scale: number): string {
  const [reach, rise, hook] = [15 * scale, 7 * scale, 4 * scale];
  return path`M${x - reach + hook} ${y - rise}H${x - reach}V${y + rise}H${x - reach + hook}M${x + reach - hook} ${y - rise}H${x + reach}V${y + rise}H${x + reach - hook}`;
}
