import type { Place } from './place.ts';

/** One placing of all points; a landmark that has no place yet is not in it. */
export type Round = Readonly<Record<string, Place>>;

/** The picture that the points are of. Its size is that of the picture as shown: upright, and scaled if it had to be. */
export interface PictureFacts {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  /** It was turned over at the bench, because the bone is of the other side. */
  readonly mirrored?: boolean;
}

/** Everything placed on one specimen. */
export interface Measured {
  readonly specimen: string;
  readonly picture: PictureFacts | null;
  /** Ends of the scale bar, and its length; 0 mm while it is not given. */
  readonly scale: readonly [Place | null, Place | null];
  readonly scaleMm: number;
  readonly rounds: readonly Round[];
  /** Landmarks that the specimen has lost. */
  readonly absent: readonly string[];
  /** Places along the break, by the landmark that is lost there. */
  readonly breaks: Readonly<Record<string, readonly Place[]>>;
}

/** A length between two landmarks that the user asked for. */
export interface OwnLength {
  readonly from: string;
  readonly to: string;
}

/** The bench: what is on it, and the specimens that were finished before. */
export interface BenchRecord {
  /** Lineage whose scheme names the points; empty for names of the user's own. */
  readonly lineage: string;
  readonly view: string;
  readonly ownNames: readonly string[];
  readonly ownLengths: readonly OwnLength[];
  readonly now: Measured;
  readonly finished: readonly Measured[];
  /** Round that is worked on, from 0. */
  readonly round: number;
  /** Axis along which the picture is shown level: an id of the scheme, `own-line`, or empty for as it is. */
  readonly level: string;
  readonly ownLine: readonly [Place | null, Place | null];
}

/** A specimen of which nothing is placed. */
export function freshMeasured(specimen = ''): Measured {
  return {
    specimen,
    picture: null,
    scale: [null, null],
    scaleMm: 0,
    rounds: [{}],
    absent: [],
    breaks: {},
  };
}

/** An empty bench for a lineage and one of its views. */
export function freshBench(lineage: string, view: string): BenchRecord {
  return {
    lineage,
    view,
    ownNames: [],
    ownLengths: [],
    now: freshMeasured(),
    finished: [],
    round: 0,
    level: '',
    ownLine: [null, null],
  };
}

/** Whether something would be lost if this specimen were cleared. */
export function hasWork({ scale, rounds, breaks }: Measured): boolean {
  return (
    scale.some((end) => end !== null) ||
    rounds.some((round) => Object.keys(round).length > 0) ||
    Object.values(breaks).some((places) => places.length > 0)
  );
}

/** Millimetres in one px of the picture; undefined until the bar has two ends that lie apart and a length. */
export function mmPerPx({
  scale: [from, to],
  scaleMm,
}: Pick<Measured, 'scale' | 'scaleMm'>): number | undefined {
  if (!from || !to || !(scaleMm > 0)) return undefined;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return length > 0 ? scaleMm / length : undefined;
}
