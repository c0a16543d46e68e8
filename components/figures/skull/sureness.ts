import { distanceBetween, type PlanePoint } from '../../../analysis/geometry/index.ts';
import type { SkullDrawing } from './skull-drawing.ts';

/** Units of the trait from a landmark up to which a line is firm, and from which on it is thin; and how thin. */
const firm = 4;
const gone = 13;
const thin = 0.55;

/**
 * Share of its width that a line has at a point: 1 at landmarks that were found on the specimen, less on the template's
 * course between them.
 */
export function surenessOf({ landmarks }: Pick<SkullDrawing, 'landmarks'>): (point: PlanePoint) => number {
  const found = Object.values(landmarks).flatMap(({ at, basis }) => (basis === 'digitised' ? [at] : []));
  return (point) => {
    const nearest = found.reduce((least, at) => Math.min(least, distanceBetween(at, point)), Infinity);
    const share = Math.min(1, Math.max(0, (nearest - firm) / (gone - firm)));
    return 1 - (1 - thin) * share * share * (3 - 2 * share);
  };
}
