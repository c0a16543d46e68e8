/** Where a number stands beside its point, in px of the picture, by the start or the end of its letters. */
export interface LabelPlace {
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'end';
}

/** Sizes in px of the picture: of a point, and of letters. */
export interface LabelSizes {
  readonly radius: number;
  readonly letters: number;
}

type Point = readonly [number, number];
type Box = readonly [left: number, top: number, right: number, bottom: number];

/** Share of their size that digits are wide and high. */
const digit = { width: 0.6, height: 0.74 };

/**
 * A place for the number of each point, counted from 1: at the corner of the four around it, upper right first, where it covers
 * fewest points and fewest numbers placed before. Cost grows with the square of the number of points.
 */
export function labelPlaces(points: readonly Point[], sizes: LabelSizes): LabelPlace[] {
  const taken: Box[] = [];
  return points.map((point, index) => {
    const choices = cornersOf(point, String(index + 1).length, sizes).map(({ place, box }) => ({
      place,
      box,
      covered:
        taken.filter((other) => areOver(box, other)).length +
        points.filter((other) => other !== point && areOver(box, boxAround(other, sizes.radius))).length,
    }));
    const best = choices.reduce((least, each) => (each.covered < least.covered ? each : least));
    taken.push(best.box);
    return best.place;
  });
}

function cornersOf([x, y]: Point, digits: number, { radius, letters }: LabelSizes) {
  const width = digits * letters * digit.width;
  const height = letters * digit.height;
  const baselines = [y - radius * 1.2, y + radius * 1.2 + height];
  return baselines.flatMap((baseline) =>
    (['start', 'end'] as const).map((anchor) => {
      const at = anchor === 'start' ? x + radius * 1.7 : x - radius * 1.7;
      const left = anchor === 'start' ? at : at - width;
      const box: Box = [left, baseline - height, left + width, baseline];
      return { place: { x: at, y: baseline, anchor }, box };
    }),
  );
}

function boxAround([x, y]: Point, radius: number): Box {
  return [x - radius, y - radius, x + radius, y + radius];
}

function areOver(one: Box, other: Box): boolean {
  return one[0] < other[2] && other[0] < one[2] && one[1] < other[3] && other[1] < one[3];
}
