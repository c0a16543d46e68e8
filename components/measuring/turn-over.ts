import type { BenchRecord, PictureFacts } from './bench-record.ts';
import type { Place } from './place.ts';

/**
 * The bench with its picture turned over, left for right, and everything that was placed on it turned with it; a second turn
 * brings all of it back. As it is where there is no picture.
 */
export function turnOver(record: BenchRecord): BenchRecord {
  const { picture, scale, rounds, breaks } = record.now;
  if (!picture) return record;
  const turn = ([x, y]: Place): Place => [Math.round((picture.width - x) * 10) / 10, y];
  const turnEnd = (end: Place | null) => end && turn(end);
  const turnEnds = ([from, to]: readonly [Place | null, Place | null]) =>
    [turnEnd(from), turnEnd(to)] as const;
  return {
    ...record,
    ownLine: turnEnds(record.ownLine),
    now: {
      ...record.now,
      picture: turnedFacts(picture),
      scale: turnEnds(scale),
      rounds: rounds.map((round) => mapValues(round, turn)),
      breaks: mapValues(breaks, (places) => places.map(turn)),
    },
  };
}

/** A picture that was turned over has another name, so that it is not saved over the first. */
function turnedFacts({ mirrored = false, name, ...size }: PictureFacts): PictureFacts {
  const turned = mirrored ? name.replace(/-turned(?=\.[^.]*$)/, '') : name.replace(/(?=\.[^.]*$)/, '-turned');
  return { ...size, name: turned, mirrored: !mirrored };
}

function mapValues<T, U>(fields: Readonly<Record<string, T>>, change: (value: T) => U): Record<string, U> {
  return Object.fromEntries(Object.entries(fields).map(([key, value]) => [key, change(value)]));
}
