import type { CompiledPicture, CompiledSpecimen } from '../../scripts/compile/contract.ts';
import type { LineageView } from '../lineage/view.ts';

/** One picture of one specimen, with the id of its place on the page. */
export interface Photograph {
  readonly id: string;
  readonly specimen: CompiledSpecimen;
  readonly picture: CompiledPicture;
}

/** Pictures of a specimen that have a size; of several the second and on are numbered. */
export function photographsOf(specimen: CompiledSpecimen): Photograph[] {
  return (specimen.pictures ?? [])
    .filter(
      ({ width, height, digest }) => width !== undefined && height !== undefined && digest !== undefined,
    )
    .map((picture, index) => ({
      id: index === 0 ? `picture-${specimen.id}` : `picture-${specimen.id}-${index + 1}`,
      specimen,
      picture,
    }));
}

/** All pictures of a lineage, in the order of its records. */
export function lineagePhotographs({ lineage }: LineageView): Photograph[] {
  return lineage.specimens.flatMap(photographsOf);
}

/** What is shown, where it is not the bone itself as it lies: a cast, a mould, a model, a picture turned over, a diagram. */
export function shownInstead({ voice }: LineageView, { specimen, picture }: Photograph): string[] {
  const { kind } = specimen;
  const isCopy = kind === 'cast' || kind === 'mould' || kind === 'model';
  return [
    ...(isCopy ? [voice.say(`photo.is.${kind}`)] : []),
    ...(picture.marks?.mirrored ? [voice.say('photo.mirrored')] : []),
    ...(picture.drawnFrom ? [voice.say(`photo.from.${picture.drawnFrom}`)] : []),
  ];
}
