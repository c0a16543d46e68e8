/** A skull that wants its middle over its age. */
export interface SeriesSkull {
  readonly taxon: string;
  readonly middle: number;
  readonly width: number;
  readonly height: number;
}

/** Where a skull stands: its left and its lower edge, in pixels; lower edges count up from the axis. */
export interface SeriesPlace {
  readonly taxon: string;
  readonly left: number;
  readonly rise: number;
}

/** Places of a series, and the room that all lanes take above the axis. */
export interface SeriesLayout {
  readonly places: readonly SeriesPlace[];
  readonly height: number;
}

/**
 * Stands skulls over their ages in as few lanes as the order allows: each in the lowest lane in which it covers no skull that
 * came before, `gap` pixels apart. Lanes are as high as their highest skull. Empty for none.
 */
export function layOutSeries(skulls: readonly SeriesSkull[], gap: number): SeriesLayout {
  const lanes: SeriesSkull[][] = [];
  for (const skull of skulls) {
    const free = lanes.find((lane) => lane.every((other) => isApart(skull, other, gap)));
    if (free) free.push(skull);
    else lanes.push([skull]);
  }
  const places: SeriesPlace[] = [];
  let rise = 0;
  for (const lane of lanes) {
    for (const { taxon, middle, width } of lane) places.push({ taxon, left: middle - width / 2, rise });
    rise += Math.max(...lane.map(({ height }) => height)) + gap;
  }
  return { places, height: rise };
}

function isApart(one: SeriesSkull, other: SeriesSkull, gap: number): boolean {
  return Math.abs(one.middle - other.middle) >= (one.width + other.width) / 2 + gap;
}
