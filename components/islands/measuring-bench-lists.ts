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

/** Shows readings as a table: a body each, its name with its rounds, then its mean and errors where a round was repeated. */
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
  const heads = rounds > 1 ? ['mean', 'error', 'percent', 'share'] : ['mean'];
  const table = document.createElement('table');
  const head = table.createTHead().insertRow();
  for (const key of heads) head.append(cell('th', words.phrase(`readings.${key}`), 'col'));
  for (const reading of found) {
    const body = table.createTBody();
    body.dataset['reading'] = reading.id;
    if (reading.isTrait) body.className = 'is-trait';
    const name = cell('th', reading.name, 'rowgroup');
    name.setAttribute('colspan', String(heads.length));
    if (rounds > 1) name.append(roundsOf(reading, words));
    body.insertRow().append(name);
    body.insertRow().append(...cellsOf(reading, rounds, words).map((text) => cell('td', text)));
  }
  place.replaceChildren(table);
}

function roundsOf({ byRound }: BenchReading, words: BenchWords): HTMLElement {
  const line = document.createElement('span');
  const values = byRound.map((value) => (value === undefined ? '–' : words.number(value, 2))).join(' · ');
  line.textContent = words.phrase('readings.rounds', { values });
  return line;
}

function cellsOf({ mean, error, unit }: BenchReading, rounds: number, words: BenchWords): string[] {
  const withUnit = (text: string) => `${text} ${words.phrase(`unit.${unit}`)}`.trim();
  const share = (number: number | undefined) =>
    number === undefined || !Number.isFinite(number) ? '–' : words.error(number);
  const middle = withUnit(words.number(mean!, 2)); // only readings with a mean are shown
  if (rounds < 2) return [middle];
  return [
    middle,
    error ? withUnit(words.error(error.technical)) : '–',
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
