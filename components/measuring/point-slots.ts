import type { BenchRecord } from './bench-record.ts';
import type { Place } from './place.ts';

/** Something that can be placed in the picture: an end of the bar, an end of the level line, a landmark, a point of a break. */
export type PointSlot =
  | { readonly kind: 'scale' | 'line'; readonly end: 0 | 1 }
  | { readonly kind: 'landmark'; readonly landmark: string }
  | { readonly kind: 'break'; readonly landmark: string; readonly index: number };

/** A name for a slot that is its own, for lists and marks. */
export function slotKey(slot: PointSlot): string {
  if (slot.kind === 'landmark') return `landmark ${slot.landmark}`;
  if (slot.kind === 'break') return `break ${slot.landmark} ${slot.index}`;
  return `${slot.kind} ${slot.end}`;
}

/** All slots in the order in which they are placed: the bar, the level line if one is wanted, landmarks with their breaks. */
export function slotsOf(record: BenchRecord, landmarks: readonly string[]): PointSlot[] {
  const ends = (kind: 'scale' | 'line'): PointSlot[] => [
    { kind, end: 0 },
    { kind, end: 1 },
  ];
  return [
    ...ends('scale'),
    ...(record.level === 'own-line' ? ends('line') : []),
    ...landmarks.flatMap((landmark): PointSlot[] => [
      { kind: 'landmark', landmark },
      ...(record.now.breaks[landmark] ?? []).map((_, index) => ({ kind: 'break', landmark, index }) as const),
    ]),
  ];
}

/** Where a slot stands in the round that is worked on; undefined while it is not placed. */
export function placeOf(record: BenchRecord, slot: PointSlot): Place | undefined {
  switch (slot.kind) {
    case 'scale':
      return record.now.scale[slot.end] ?? undefined;
    case 'line':
      return record.ownLine[slot.end] ?? undefined;
    case 'landmark':
      return record.now.rounds[record.round]?.[slot.landmark];
    case 'break':
      return record.now.breaks[slot.landmark]?.[slot.index];
  }
}

/** Whether a slot still waits for its place; a landmark that is lost waits for none. */
export function isOpen(record: BenchRecord, slot: PointSlot): boolean {
  if (slot.kind === 'landmark' && record.now.absent.includes(slot.landmark)) return false;
  return placeOf(record, slot) === undefined;
}

/** The next open slot after one, going round once; undefined where none is open. */
export function nextOpen(
  record: BenchRecord,
  slots: readonly PointSlot[],
  after?: PointSlot,
): PointSlot | undefined {
  const at = after ? slots.findIndex((slot) => slotKey(slot) === slotKey(after)) : -1;
  return [...slots.slice(at + 1), ...slots.slice(0, at + 1)].find((slot) => isOpen(record, slot));
}

/** The slot so many steps on in the list, round its ends. */
export function stepSlot(slots: readonly PointSlot[], from: PointSlot | undefined, step: number): PointSlot {
  const at = from ? slots.findIndex((slot) => slotKey(slot) === slotKey(from)) : step > 0 ? -1 : 0;
  return slots[(at + step + slots.length) % slots.length]!;
}

/** The first slot whose place differs between two states: what an undo changed. */
export function changedSlot(
  before: BenchRecord,
  after: BenchRecord,
  slots: readonly PointSlot[],
): PointSlot | undefined {
  return slots.find((slot) => String(placeOf(before, slot)) !== String(placeOf(after, slot)));
}
