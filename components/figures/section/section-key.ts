import { glyph } from '../scene/glyphs.ts';
import { path, text, wrap, type Mark, type Shape } from '../scene/scene.ts';
import type { SectionLayout } from './section-layout.ts';

/** A word and a note for each kind of mark, in the page's language. */
export type SectionKeyWords = Record<(typeof rows)[number], { word: string; note: string }>;

const rows = ['mean', 'individual', 'worn', 'bed', 'between'] as const;

/** The key: each mark as it stands in the figure, its word, and what it rests on. Empty where a layout has no room. */
export function sectionKey(layout: SectionLayout, words: SectionKeyWords): Mark[] {
  const { key: place, fontSize: size, markScale: scale } = layout;
  if (!place) return [];
  const letters = Math.floor((layout.width - place.x - 40 * scale) / (size * 0.5));
  return rows.flatMap((row, index): Mark[] => {
    const y = place.y + index * place.lineHeight;
    const { word, note } = words[row];
    const at = place.x + 40 * scale;
    const lines = [word, ...wrap(note, letters).slice(0, 2)];
    return [
      ...samples[row](place.x + 15 * scale, y, scale).map(([role, shape]): Mark => ({
        layer: 'key',
        role,
        shape,
      })),
      ...lines.map((content, line): Mark => ({
        layer: 'key',
        role: line === 0 ? 'key-word' : 'key-word key-note',
        shape: text(
          at,
          y + size * (0.34 + line * 1.2),
          size,
          content,
          'start',
          line === 0 ? 'strong' : 'plain',
        ),
      })),
    ];
  });
}

type Sample = (x: number, y: number, scale: number) => [role: string, shape: Shape][];

const samples: Record<(typeof rows)[number], Sample> = {
  mean: (x, y, scale) => {
    const [reach, tick] = [13 * scale, 3.6 * scale];
    const d = path`M${x - reach} ${y}H${x + reach}M${x - reach} ${y - tick}V${y + tick}M${x + reach} ${y - tick}V${y + tick}`;
    return [['whisker', { kind: 'path', d }], ...glyphOf('measured', x, y, scale)];
  },
  individual: (x, y, scale) => {
    const strokes = [-10, -4, -1, 2, 9].map(
      (at) => path`M${x + at * scale} ${y - 3.6 * scale}v${7.2 * scale}`,
    );
    return [['individual', { kind: 'path', d: strokes.join('') }]];
  },
  worn: (x, y, scale) => [
    ['arrow', { kind: 'path', d: path`M${x} ${y}h${11 * scale}` }],
    ...glyphOf('bounded', x - 5 * scale, y, scale * 0.8),
  ],
  bed: (x, y, scale) => [['bed-line', { kind: 'path', d: path`M${x - 13 * scale} ${y}H${x + 13 * scale}` }]],
  between: (x, y, scale) => [
    ['age-between', { kind: 'path', d: path`M${x - 13 * scale} ${y}H${x + 13 * scale}` }],
  ],
};

function glyphOf(status: 'measured' | 'bounded', x: number, y: number, scale: number): [string, Shape][] {
  return glyph(status, x, y, scale).map((part) => [part.role, part.shape]);
}
