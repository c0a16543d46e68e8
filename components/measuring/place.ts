/** A place in the picture in px from its top left corner, x to the right and y down, as the sheets keep it. */
export type Place = readonly [x: number, y: number];

/** Distance of two places, px. */
export function distancePx([ax, ay]: Place, [bx, by]: Place): number {
  return Math.hypot(bx - ax, by - ay);
}

/** A place at the tenth of a px, which is finer than a hand and what the sheets keep. */
export function settlePlace([x, y]: Place): Place {
  return [Math.round(x * 10) / 10, Math.round(y * 10) / 10];
}

/** Whether a value out of storage is a place. */
export function isPlace(value: unknown): value is Place {
  return (
    Array.isArray(value) &&
    value.length === 2 &&
    value.every((part) => typeof part === 'number' && Number.isFinite(part))
  );
}
