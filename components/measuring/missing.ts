import { mmPerPx, type BenchRecord } from './bench-record.ts';

/** What still keeps a specimen from being taken away, as codes that have messages; points with their number. */
export interface Missing {
  readonly codes: readonly ('specimen' | 'scale' | 'none')[];
  /** Landmarks of any round that are neither placed nor lost. */
  readonly points: number;
}

/** What is missing on the specimen in hand. Points that wait are said and keep nobody from taking the sheet. */
export function missingOf({ now }: BenchRecord, landmarks: readonly string[]): Missing {
  const present = landmarks.filter((id) => !now.absent.includes(id));
  const waiting = now.rounds.map((round) => present.filter((id) => !round[id]).length);
  const none = now.rounds.every((round) => Object.keys(round).length === 0);
  return {
    codes: [
      ...(now.specimen === '' ? (['specimen'] as const) : []),
      ...(mmPerPx(now) === undefined ? (['scale'] as const) : []),
      ...(none ? (['none'] as const) : []),
    ],
    points: none ? 0 : waiting.reduce((sum, count) => sum + count, 0),
  };
}
