import type { Digitising } from './digitising.ts';
import type { SchemeIndex } from './scheme-index.ts';

/**
 * Renames the points of a digitising for laying its shape on others. In a picture that was turned over the animal's left lies
 * where the right of the rest lies, so both ends of each pair that the view shows change names; every other name stays.
 */
export function sideNames(
  { source }: Pick<Digitising, 'source'>,
  { landmarks }: Pick<SchemeIndex, 'landmarks'>,
): (landmark: string) => string {
  if (!source.mirrored) return (landmark) => landmark;
  const isShown = (id: string) => (landmarks.get(id)?.views ?? [source.view]).includes(source.view);
  return (landmark) => {
    const pair = landmarks.get(landmark)?.pair;
    return pair !== undefined && landmarks.has(pair) && isShown(pair) && isShown(landmark) ? pair : landmark;
  };
}
