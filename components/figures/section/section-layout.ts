import {
  phone as phonePlate,
  tall as tallPlate,
  wide as widePlate,
  type PlateLayout,
} from '../scene/layout.ts';

/** Where the parts of the figure of a section stand, in pixels of its own view box. */
export interface SectionLayout {
  name: 'wide' | 'phone' | 'tall' | 'small';
  width: number;
  height: number;
  fontSize: number;
  /** Size of marks against the wide figure. */
  markScale: number;
  /** The rock column: its left edge, and the width of its coarsest rock. */
  column: { left: number; width: number };
  /** Left edge of the ages beside the column; left out where there is no room. */
  agesLeft?: number;
  /** Whether errors of dates and numbers of levels are written out. */
  detailed: boolean;
  chart: { left: number; right: number; top: number; bottom: number };
  /** Where the base of the crown stands on the axis of values; the axis ends at `chart.right`. */
  zero: number;
  /** Middle of the tooth that lies on the ruler, and the ruler; left out on a card. */
  tooth?: { middle: number };
  rulerTop?: number;
  title?: { x: number; y: number; letters: number };
  key?: { x: number; y: number; lineHeight: number };
}

/** The three formats are those of the plate of a tree: screens know only one size of figure. */
function formatOf({ name, width, height, fontSize }: PlateLayout) {
  return { name, width, height, fontSize };
}

const wide: SectionLayout = {
  ...formatOf(widePlate),
  markScale: 1,
  column: { left: 46, width: 54 },
  agesLeft: 110,
  detailed: true,
  chart: { left: 232, right: 640, top: 446, bottom: 834 },
  zero: 250,
  tooth: { middle: 238 },
  rulerTop: 412,
  title: { x: 14, y: 34, letters: 78 },
  key: { x: 668, y: 566, lineHeight: 40 },
};

const phone: SectionLayout = {
  ...formatOf(phonePlate),
  markScale: 0.74,
  column: { left: 24, width: 24 },
  agesLeft: 51,
  detailed: false,
  chart: { left: 88, right: 250, top: 206, bottom: 442 },
  zero: 98,
  tooth: { middle: 104 },
  rulerTop: 178,
};

const tall: SectionLayout = {
  ...formatOf(tallPlate),
  markScale: 1.6,
  column: { left: 78, width: 86 },
  agesLeft: 180,
  detailed: false,
  chart: { left: 306, right: 752, top: 772, bottom: 1292 },
  zero: 330,
  tooth: { middle: 520 },
  rulerTop: 722,
  title: { x: 36, y: 62, letters: 42 },
  key: { x: 792, y: 820, lineHeight: 90 },
};

/** The figure in its three formats; style sheets show the one that fits the screen. */
export const sectionLayouts = [wide, phone, tall] as const;

/** The figure without words, at the size of a card. */
export function smallSectionLayout(width: number, height: number, markScale: number): SectionLayout {
  const margin = 18 * markScale;
  return {
    name: 'small',
    width,
    height,
    fontSize: 12,
    markScale,
    column: { left: margin, width: width * 0.12 },
    detailed: false,
    chart: { left: width * 0.2, right: width - margin, top: margin, bottom: height - margin },
    zero: width * 0.24,
  };
}
