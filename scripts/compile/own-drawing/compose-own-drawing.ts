import { findSimilarity } from '../../../analysis/geometry/similarity.ts';
import type { AnalysedLineage } from '../analyse/lineage.ts';
import type { CompiledDrawing } from '../contract.ts';

/**
 * Drawings with the author's own in place of the computed one, where a specimen that the shape rests on has one. It is laid
 * into the frame by the landmarks that it marks: by the two ends of the measured line where it marks both and both were found,
 * so that they stand at 0 and 100, else by all.
 */
export function withOwnDrawings(
  drawings: readonly CompiledDrawing[],
  { lineage: { ownDrawings, specimens } }: AnalysedLineage,
): CompiledDrawing[] {
  return drawings.map((drawing) => {
    const specimen = drawing.specimens.find((id) => ownDrawings.has(id));
    const record = specimens.find((each) => each.record.value.id === specimen)?.record.value;
    if (specimen === undefined || !record?.drawing) return drawing;
    const { bone, restored, accent, landmarks } = ownDrawings.get(specimen)!;
    const place = placeOf(landmarks, drawing);
    if (!place) return drawing;
    const { image, licence } = { ...record.rights, ...record.drawing.rights };
    const own = {
      specimen,
      by: record.drawing.by,
      credit: image!,
      licence: licence!,
      bone,
      restored,
      accent,
      place,
    };
    return { ...drawing, own };
  });
}

type Matrix = [number, number, number, number, number, number];

function placeOf(
  landmarks: ReadonlyMap<string, readonly [number, number]>,
  { points }: CompiledDrawing,
): Matrix | undefined {
  const shared = [...landmarks.keys()].filter((id) => points[id]?.basis === 'digitised');
  const isEnd = (id: string) =>
    Math.min(Math.abs(points[id]!.at[0]), Math.abs(points[id]!.at[0] - 100)) < 1e-6;
  const ends = shared.filter(isEnd);
  const used = ends.length === 2 ? ends : shared;
  const fit = findSimilarity(
    used.map((id) => landmarks.get(id)!),
    used.map((id) => points[id]!.at),
  );
  return fit && [fit.a[0], fit.a[1], -fit.a[1], fit.a[0], fit.b[0], fit.b[1]];
}
