import type { BenchScheme } from '../measuring/bench-scheme.ts';
import type { BenchRecord } from '../measuring/bench-record.ts';
import type { BenchWords } from '../measuring/bench-words.ts';
import { placeOf, slotKey, type PointSlot } from '../measuring/point-slots.ts';
import type { BenchReading } from '../measuring/readings.ts';

/** The name of a slot in the user's words. */
export function slotName(slot: PointSlot, scheme: BenchScheme, words: BenchWords): string {
  if ('end' in slot) return words.phrase(`slot.${slot.kind}.${slot.end}`);
  const name = scheme.landmarks.find(({ id }) => id === slot.landmark)?.name ?? slot.landmark;
  return slot.kind === 'landmark' ? name : words.phrase('slot.break', { name, number: slot.index + 1 });
}

/** Shows every slot with its state; the entry that has the focus keeps it. */
export function showSlots(
  list: HTMLElement,
  slots: readonly PointSlot[],
  hand: PointSlot | undefined,
  record: BenchRecord,
  scheme: BenchScheme,
  words: BenchWords,
): void {
  const scrolled = list.scrollTop;
  const focused = list.contains(document.activeElement)
    ? (document.activeElement as HTMLElement).dataset['slot']
    : undefined;
  const entries = slots.map((slot) => {
    const entry = document.createElement('li');
    const button = document.createElement('button');
    const isAbsent = slot.kind === 'landmark' && record.now.absent.includes(slot.landmark);
    const state = isAbsent ? 'absent' : placeOf(record, slot) ? 'placed' : 'open';
    button.type = 'button';
    button.dataset['slot'] = slotKey(slot);
    if (hand && slotKey(slot) === slotKey(hand)) button.setAttribute('aria-current', 'true');
    button.append(slotName(slot, scheme, words), ' ');
    const said = document.createElement('span');
    said.textContent = words.phrase(`state.${state}`);
    button.append(said);
    entry.dataset['state'] = state;
    entry.append(button);
    return entry;
  });
  list.replaceChildren(...entries);
  list.scrollTop = scrolled;
  const current = list.querySelector<HTMLElement>('[aria-current]')?.parentElement;
  if (current) keepInSight(list, current);
  if (focused !== undefined) list.querySelector<HTMLElement>(`[data-slot="${CSS.escape(focused)}"]`)?.focus();
}

/** Scrolls a list, and not the page, so that an entry is seen. */
function keepInSight(list: HTMLElement, entry: HTMLElement): void {
  const [own, around] = [entry.getBoundingClientRect(), list.getBoundingClientRect()];
  if (own.top < around.top) list.scrollTop -= around.top - own.top;
  else if (own.bottom > around.bottom) list.scrollTop += own.bottom - around.bottom;
}

/** Fills a choice with options, leaving the chosen one chosen. */
export function showOptions(
  select: HTMLSelectElement,
  options: readonly (readonly [value: string, text: string])[],
  chosen: string,
): void {
  select.replaceChildren(...options.map(([value, text]) => new Option(text, value, false, value === chosen)));
}

/** Shows readings as a table, a column a round, with their errors where a round was repeated. */
export function showReadings(
  place: HTMLElement,
  readings: readonly BenchReading[],
  rounds: number,
  words: BenchWords,
): void {
  const found = readings.filter(({ mean }) => mean !== undefined);
  if (found.length === 0) {
    place.textContent = words.phrase('readings.none');
    return;
  }
  const heads = [
    words.phrase('readings.name'),
    ...(rounds > 1
      ? Array.from({ length: rounds }, (_, index) => words.phrase('readings.round', { number: index + 1 }))
      : []),
    words.phrase('readings.mean'),
    ...(rounds > 1 ? ['error', 'percent', 'share'].map((key) => words.phrase(`readings.${key}`)) : []),
  ];
  const table = document.createElement('table');
  const head = table.createTHead().insertRow();
  for (const text of heads) head.append(cell('th', text, 'col'));
  const body = table.createTBody();
  for (const reading of found) {
    const row = body.insertRow();
    if (reading.isTrait) row.className = 'is-trait';
    row.dataset['reading'] = reading.id;
    row.append(
      cell('th', reading.name, 'row'),
      ...cellsOf(reading, rounds, words).map((text) => cell('td', text)),
    );
  }
  place.replaceChildren(table);
}

function cellsOf({ byRound, mean, error, unit }: BenchReading, rounds: number, words: BenchWords): string[] {
  const value = (number: number | undefined) =>
    number === undefined ? '–' : `${words.number(number, 2)} ${words.phrase(`unit.${unit}`)}`.trim();
  if (rounds < 2) return [value(mean)];
  const share = (number: number | undefined) =>
    number === undefined || Number.isNaN(number) ? '–' : words.error(number);
  return [
    ...Array.from({ length: rounds }, (_, index) => value(byRound[index])),
    value(mean),
    error ? `${words.error(error.technical)} ${words.phrase(`unit.${unit}`)}`.trim() : '–',
    share(error?.relativePercent),
    share(error?.sharePercent),
  ];
}

function cell(tag: 'th' | 'td', text: string, scope?: string): HTMLElement {
  const made = document.createElement(tag);
  made.textContent = text;
  if (scope !== undefined) made.setAttribute('scope', scope);
  return made;
}
