import { freshMeasured, type BenchRecord, type Measured, type Round } from './bench-record.ts';
import { settlePlace, type Place } from './place.ts';
import type { PointSlot } from './point-slots.ts';

/** The bench with a slot put at a place, or taken out of the picture where the place is null. */
export function putPlace(record: BenchRecord, slot: PointSlot, place: Place | null): BenchRecord {
  const at = place && settlePlace(place);
  switch (slot.kind) {
    case 'scale':
      return withNow(record, { scale: withEnd(record.now.scale, slot.end, at) });
    case 'line':
      return { ...record, ownLine: withEnd(record.ownLine, slot.end, at) };
    case 'landmark':
      return putLandmark(record, slot.landmark, at);
    case 'break':
      return putBreak(record, slot.landmark, slot.index, at);
  }
}

function putLandmark(record: BenchRecord, landmark: string, place: Place | null): BenchRecord {
  const rounds = record.now.rounds.map((round, index) =>
    index === record.round ? withPlace(round, landmark, place) : round,
  );
  if (!place) return withNow(record, { rounds });
  // what is there is not lost, and has no break
  return withNow(record, {
    rounds,
    absent: record.now.absent.filter((id) => id !== landmark),
    breaks: without(record.now.breaks, landmark),
  });
}

function withPlace(round: Round, landmark: string, place: Place | null): Round {
  return place ? { ...round, [landmark]: place } : without(round, landmark);
}

function putBreak(record: BenchRecord, landmark: string, index: number, place: Place | null): BenchRecord {
  const own = [...(record.now.breaks[landmark] ?? [])];
  if (place) own[Math.min(index, own.length)] = place;
  else own.splice(index, 1);
  const others = without(record.now.breaks, landmark);
  return withNow(record, { breaks: own.length > 0 ? { ...others, [landmark]: own } : others });
}

/**
 * The bench after a tap with a slot in hand: the slot is put there; a landmark that is lost gets a point of its break, so
 * that one lost point never comes back by a tap.
 */
export function tapPlace(record: BenchRecord, slot: PointSlot, place: Place): BenchRecord {
  if (slot.kind !== 'landmark' || !record.now.absent.includes(slot.landmark))
    return putPlace(record, slot, place);
  const index = record.now.breaks[slot.landmark]?.length ?? 0;
  return putPlace(record, { kind: 'break', landmark: slot.landmark, index }, place);
}

/** The bench with a landmark said to be lost, its places in every round gone; or said to be there after all. */
export function markAbsent(record: BenchRecord, landmark: string, absent: boolean): BenchRecord {
  const others = record.now.absent.filter((id) => id !== landmark);
  if (!absent) return withNow(record, { absent: others, breaks: without(record.now.breaks, landmark) });
  return withNow(record, {
    absent: [...others, landmark],
    rounds: record.now.rounds.map((round) => without(round, landmark)),
  });
}

/** The bench with a round more, empty, which is then worked on. */
export function addRound(record: BenchRecord): BenchRecord {
  const rounds = [...record.now.rounds, {}];
  return { ...withNow(record, { rounds }), round: rounds.length - 1 };
}

/** The bench with the specimen put among the finished, and a fresh one on it. */
export function finishSpecimen(record: BenchRecord): BenchRecord {
  return {
    ...record,
    now: freshMeasured(),
    finished: [...record.finished.filter(({ specimen }) => specimen !== record.now.specimen), record.now],
    round: 0,
    level: '',
    ownLine: [null, null],
  };
}

/** The bench with some facts of the specimen changed. */
export function withNow(record: BenchRecord, change: Partial<Measured>): BenchRecord {
  return { ...record, now: { ...record.now, ...change } };
}

function withEnd<T extends readonly [Place | null, Place | null]>(ends: T, end: 0 | 1, place: Place | null) {
  return (end === 0 ? [place, ends[1]] : [ends[0], place]) as readonly [Place | null, Place | null];
}

function without<T>(fields: Readonly<Record<string, T>>, key: string): Record<string, T> {
  return Object.fromEntries(Object.entries(fields).filter(([name]) => name !== key));
}
