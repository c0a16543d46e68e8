import type { InkRole } from './ink-shape.ts';
import type { InkQuality } from './skull-drawing.ts';

/** Colours of the paper room; print and one-colour figures set all inks alike. */
export interface InkPalette {
  readonly paper: string;
  readonly bone: string;
  readonly socket: string;
  readonly ink: string;
  readonly second: string;
  readonly accent: string;
}

/** Ink on warm paper, with the one accent. */
export const platePalette: InkPalette = {
  paper: '#f8f3e8',
  bone: '#fdfaf3',
  socket: '#c9bda6',
  ink: '#1f1a15',
  second: '#5a4f43',
  accent: '#a2301a',
};

/** Black on white: the accent is black and is told by its fill. */
export const printPalette: InkPalette = {
  paper: '#ffffff',
  bone: '#ffffff',
  socket: '#d0d0d0',
  ink: '#000000',
  second: '#000000',
  accent: '#000000',
};

/** Widths in units of the trait: a small figure needs a heavier pen and wider ruling to stay clear. */
export interface InkWeights {
  readonly pen: number;
  readonly ruling: number;
  readonly rulingWidth: number;
  readonly accentRuling: number;
  readonly accentRulingWidth: number;
  readonly dash: number;
  readonly dot: number;
}

/** Widths for each quality. */
export const inkWeights: Readonly<Record<InkQuality, InkWeights>> = {
  outline: {
    pen: 0.6,
    ruling: 2.6,
    rulingWidth: 0.32,
    accentRuling: 1.9,
    accentRulingWidth: 0.75,
    dash: 0.6,
    dot: 0,
  },
  hero: {
    pen: 0.62,
    ruling: 2.2,
    rulingWidth: 0.3,
    accentRuling: 1.9,
    accentRulingWidth: 0.85,
    dash: 0.58,
    dot: 0.5,
  },
  card: {
    pen: 0.85,
    ruling: 3.2,
    rulingWidth: 0.45,
    accentRuling: 2.6,
    accentRulingWidth: 1.1,
    dash: 0.85,
    dot: 0.72,
  },
  mini: {
    pen: 1.25,
    ruling: 5.6,
    rulingWidth: 0.9,
    accentRuling: 4,
    accentRulingWidth: 1.9,
    dash: 1.3,
    dot: 0,
  },
};

/** Presentation attributes of a role: a style sheet may overrule each of them by the class. */
export function inkAttributes(role: InkRole, palette: InkPalette, weights: InkWeights): string {
  const stroke = (colour: string, width: number, more = '') =>
    `fill="none" stroke="${colour}" stroke-width="${rounded(width)}" stroke-linejoin="round"${more}`;
  const dashes = (length: number, gap: number) => ` stroke-dasharray="${rounded(length)} ${rounded(gap)}"`;
  const dot = (size: number) => stroke(palette.ink, weights.dot * size, ' stroke-linecap="round"');
  const { pen, dash } = weights;
  const attributes: Record<InkRole, string> = {
    bone: `fill="${palette.bone}"`,
    socket: `fill="${palette.socket}"`,
    hole: `fill="${palette.ink}"`,
    tooth: `fill="${palette.bone}"`,
    pen: `fill="${palette.ink}"`,
    soft: `fill="${palette.ink}"`,
    'stipple-light': dot(0.8),
    'stipple-middle': dot(1),
    'stipple-dark': dot(1.16),
    ruling: stroke(palette.second, weights.rulingWidth),
    dash: stroke(palette.ink, dash, dashes(3.2, 1.7)),
    'dash-thin': stroke(palette.ink, dash * 0.75, dashes(2, 1.3)),
    torn: `fill="${palette.ink}"`,
    accent: `fill="${palette.accent}"`,
    'accent-ruling': stroke(palette.accent, weights.accentRulingWidth),
    'accent-rim': stroke(palette.accent, pen * 1.7, ' stroke-linecap="round"'),
    'accent-rim-dashed': stroke(palette.accent, pen * 1.6, dashes(3, 1.7)),
    'accent-close': stroke(palette.accent, pen * 0.7),
    limit: stroke(palette.accent, pen * 0.9, dashes(0.9, 1.5)),
  };
  return attributes[role];
}

function rounded(width: number): string {
  return String(Math.round(width * 100) / 100);
}
