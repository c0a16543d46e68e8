/** How a bracket tree is spread in one format, in pixels of its own view box. */
export interface BracketLayout {
  name: 'wide' | 'phone' | 'tall';
  width: number;
  /** Size of names; everything typographic follows from it. */
  fontSize: number;
  markScale: number;
  /** Room between the rows, from the least at which names stay apart. */
  row: { least: number; most: number; allTogether: number };
  /** Names give the genus as its initial, and values are left to the list. */
  short: boolean;
}

/** Past so many animals the gallery's format is left out: a tree of that length is read in a frame that scrolls. */
const mostTall = 60;

/** The formats in which a tree of so many animals is drawn. */
export function layoutsFor(animals: number): BracketLayout[] {
  return bracketLayouts.filter(({ name }) => name !== 'tall' || animals <= mostTall);
}

export const bracketLayouts: readonly BracketLayout[] = [
  {
    name: 'wide',
    width: 904,
    fontSize: 15,
    markScale: 1,
    row: { least: 19, most: 28, allTogether: 680 },
    short: false,
  },
  {
    name: 'phone',
    width: 350,
    fontSize: 13,
    markScale: 0.84,
    row: { least: 19, most: 26, allTogether: 600 },
    short: true,
  },
  {
    name: 'tall',
    width: 1000,
    fontSize: 22,
    markScale: 1.5,
    row: { least: 30, most: 46, allTogether: 1120 },
    short: false,
  },
];

/** Distance from row to row for so many animals: as wide as looks well, as narrow as names allow. */
export function rowHeight({ row }: BracketLayout, animals: number): number {
  return Math.min(row.most, Math.max(row.least, Math.floor(row.allTogether / animals)));
}
