import type { Box } from './label-slots.ts';

/** Where the parts of a plate stand, in pixels of its own view box. */
export interface PlateLayout {
  name: 'wide' | 'phone' | 'tall';
  width: number;
  height: number;
  /** Size of labels; everything typographic follows from it. */
  fontSize: number;
  /** Size of marks against the wide plate. */
  markScale: number;
  column: { left: number; width: number; turned: boolean };
  chart: { left: number; right: number; top: number; bottom: number };
  /** Zero and hundred of the trait's axis, shared by skull, ruler and chart. */
  axis: { zero: number; hundred: number };
  /** Height of the tooth line of the focal skull, and of the ruler. */
  skullBase: number;
  rulerTop: number;
  /** Right end and height of the bar in millimetres, beside the skull. */
  scaleBar: { right: number; y: number };
  title?: { x: number; y: number };
  /** Where the key stands; `wrapped` breaks its words over several lines. */
  key?: { x: number; y: number; width: number; lineHeight: number; wrapped?: true };
  /** Room for names beside the marks. */
  names: { left: number; right: number; shorten: boolean };
  /** Where the caption of a slice stands, and how many letters fit a line. */
  sliceWords: { x: number; letters: number };
  /** Small skulls at their true age: left edge and width of each column, and where the caption and buttons of the page stand. */
  skulls?: { columns: number[]; width: number; kept: Box[] };
}

/** The plate beside the story on wide screens, and in print. */
export const wide: PlateLayout = {
  name: 'wide',
  width: 904,
  height: 852,
  fontSize: 13.5,
  markScale: 1,
  column: { left: 14, width: 80, turned: false },
  chart: { left: 126, right: 594, top: 440, bottom: 836 },
  axis: { zero: 138, hundred: 388 },
  skullBase: 256,
  rulerTop: 390,
  scaleBar: { right: 690, y: 395 },
  title: { x: 14, y: 34 },
  key: { x: 616, y: 502, width: 278, lineHeight: 22 },
  skulls: {
    columns: [606, 704, 802],
    width: 88,
    kept: [
      { left: 590, right: 700, top: 0, bottom: 408 },
      { left: 700, right: 904, top: 0, bottom: 462 },
      { left: 736, right: 904, top: 786, bottom: 852 },
    ],
  },
  names: { left: 128, right: 596, shorten: false },
  sliceWords: { x: 606, letters: 24 },
};

/** The upper part of a phone's screen. */
export const phone: PlateLayout = {
  name: 'phone',
  width: 390,
  height: 452,
  fontSize: 12,
  markScale: 0.86,
  column: { left: 8, width: 20, turned: true },
  chart: { left: 58, right: 252, top: 262, bottom: 442 },
  axis: { zero: 66, hundred: 207 },
  skullBase: 146,
  rulerTop: 228,
  scaleBar: { right: 382, y: 216 },
  names: { left: 58, right: 254, shorten: true },
  sliceWords: { x: 258, letters: 20 },
};

/** A gallery screen in portrait. */
export const tall: PlateLayout = {
  name: 'tall',
  width: 1080,
  height: 1320,
  fontSize: 21.5,
  markScale: 1.6,
  column: { left: 36, width: 124, turned: false },
  chart: { left: 214, right: 744, top: 762, bottom: 1292 },
  axis: { zero: 232, hundred: 562 },
  skullBase: 492,
  rulerTop: 688,
  scaleBar: { right: 1044, y: 694 },
  title: { x: 36, y: 62 },
  key: { x: 796, y: 790, width: 268, lineHeight: 26, wrapped: true },
  names: { left: 214, right: 780, shorten: true },
  sliceWords: { x: 760, letters: 24 },
};

export const layouts = [wide, phone, tall] as const;

/** What is needed of a format to move its chart. */
interface Movable {
  name: string;
  fontSize: number;
  rulerTop?: number;
  chart: { top: number };
  title?: { y: number };
}

/**
 * The same format with nothing lying on the ruler: ruler and chart move up into the room that it would take. On the tall
 * one the caption stands above the ruler too, down to `captionBottom` in pixels.
 */
export function withoutPicture<Layout extends Movable>(layout: Layout, captionBottom: number): Layout {
  if (layout.rulerTop === undefined) return layout;
  const words = layout.title ? layout.title.y + layout.fontSize * 6 : layout.fontSize * 3;
  const head = layout.name === 'tall' ? captionBottom : words;
  const rise = Math.max(0, layout.rulerTop - head);
  return {
    ...layout,
    rulerTop: layout.rulerTop - rise,
    chart: { ...layout.chart, top: layout.chart.top - rise },
  };
}

/** Where the longest caption ends on the tall plate, in pixels. */
const tallCaptionBottom = 306;

/** The format of a plate for a trait without a skull to draw. */
export function withoutSkull(layout: PlateLayout): PlateLayout {
  return withoutPicture(layout, tallCaptionBottom);
}
