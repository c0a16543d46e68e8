import { drawingsOf } from '../figures/skull-figures.ts';
import type { LineageView } from '../lineage/view.ts';
import { findSliceBlock } from './compose-block.ts';

/** The part of the drawing frame that every small picture of a lineage shows, so that they stand in a row at one scale. */
export interface SmallSkullBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Room for teeth and edges beyond the landmarks, in units of the frame. */
const rim = 6;

/** The box of the outlines that the slice draws, or one round all landmarks where there is no slice; undefined without a drawing. */
export function findSmallSkullBox(view: LineageView): SmallSkullBox | undefined {
  const block = findSliceBlock(view);
  if (block) {
    const [left, top, width, height] = block.box.map((tenths) => tenths / 10);
    return { left: left!, top: top!, width: width!, height: height! };
  }
  const places = drawingsOf(view).flatMap(({ points }) => Object.values(points).map(({ at }) => at));
  if (places.length === 0) return undefined;
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs) - rim, Math.min(...ys) - rim];
  return { left, top, width: Math.max(...xs) + rim - left, height: Math.max(...ys) + rim - top };
}
