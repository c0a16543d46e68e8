import type { CompiledPicture } from '../contract-pictures.ts';
import type { PictureFile } from '../read/picture-file.ts';
import type { Digitising } from '../resolve/digitising.ts';
import type { ResolvedSpecimen } from '../resolve/specimens.ts';
import type { Specimen } from '../schema/index.ts';

type Place = [number, number];

/** The pictures of a specimen with whose they are; rights of a picture are its own, and where it has none those of its specimen. */
export function composePictures(
  { record: { value }, digitisings }: ResolvedSpecimen,
  files: ReadonlyMap<string, PictureFile>,
): CompiledPicture[] {
  return value.pictures.map((picture) => {
    const { image, licence, venues } = { ...value.rights, ...picture.rights };
    const file = files.get(picture.file.normalize('NFC'));
    const digitising = digitisings.find(({ source }) => source.picture === picture.file);
    return {
      file: picture.file,
      ...(file && { width: file.width, height: file.height, digest: file.digest }),
      alt: picture.alt!,
      ...(picture.drawnFrom && { drawnFrom: picture.drawnFrom }),
      credit: image!,
      licence: licence!,
      ...(venues && { venues }),
      ...(digitising && marksOf(digitising, value)),
    };
  });
}

/** What was placed on a picture. A sheet in millimetres says nothing of px, and gives none. */
function marksOf(
  { source, repeats, mmPerUnit, dimensions }: Digitising,
  { lost }: Specimen,
): Pick<CompiledPicture, 'marks'> {
  if (dimensions !== 2 || mmPerUnit === 1) return {};
  const ids = [...new Set(repeats.flatMap((repeat) => [...repeat.keys()]))];
  const { scale } = source;
  return {
    marks: {
      landmarks: ids.map((id) => ({
        id,
        at: meanPlace(repeats.flatMap((repeat) => repeat.get(id)?.at ?? [])),
      })),
      breaks: lost.flatMap(({ landmark, break: line = [] }) => {
        const points = line.filter((point) => point.length === 2);
        return points.length > 0 ? [{ landmark, points }] : [];
      }),
      ...(scale && { scale }),
      mmPerPx: mmPerUnit,
      mirrored: source.mirrored === true,
    },
  };
}

/** Mean of places written one after the other: x, y, x, y. */
function meanPlace(coordinates: readonly number[]): Place {
  const count = coordinates.length / 2;
  const mean = (axis: number) =>
    coordinates.filter((_, index) => index % 2 === axis).reduce((sum, each) => sum + each, 0) / count;
  return [mean(0), mean(1)];
}
