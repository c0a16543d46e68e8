import { findAxis } from '../../analysis/traits/index.ts';
import { hasWork, mmPerPx } from '../measuring/bench-record.ts';
import { distancePx, type Place } from '../measuring/place.ts';
import { placeOf, slotKey, slotsOf } from '../measuring/point-slots.ts';
import { readingsOf } from '../measuring/readings.ts';
import { showAway } from './measuring-bench-away.ts';
import { showOptions, showReadings, showSlots, slotName } from './measuring-bench-lists.ts';
import type { MeasuringBench } from './measuring-bench.ts';
import type { StageMark } from './measuring-bench-marks.ts';

/** A bar shorter than this in the picture is said to make lengths uncertain, px. */
const shortBarPx = 100;

/** Shows the whole of the bench as it stands. */
export function showBench(bench: MeasuringBench): void {
  const { record, scheme, words } = bench;
  const slots = bench.slots();
  if (bench.hand && !slots.some((slot) => slotKey(slot) === slotKey(bench.hand!))) bench.hand = undefined;
  showStage(bench);
  showHand(bench);
  showNames(bench);
  showScale(bench);
  showLevel(bench);
  showSlots(find(bench, '[data-points]'), slots, bench.hand, record, scheme, words);
  const rounds = record.now.rounds.length;
  showOptions(
    find(bench, '[data-round]'),
    record.now.rounds.map((_, index) => [
      String(index),
      words.phrase('round.of', { number: index + 1, count: rounds }),
    ]),
    String(record.round),
  );
  showReadings(
    find(bench, '[data-readings]'),
    readingsOf(record.now, record.finished, scheme),
    rounds,
    words,
  );
  showAway(bench, record, scheme, words);
  find(bench, '[data-kept]').textContent = words.phrase(bench.kept ? 'kept' : 'not-kept');
}

function showStage(bench: MeasuringBench): void {
  const { record, hand, scheme } = bench;
  const ends = [record.now.scale, record.ownLine] as const;
  const marks = slotsOf(
    record,
    scheme.landmarks.map(({ id }) => id),
  ).flatMap((slot): StageMark[] => {
    const at = placeOf(record, slot);
    if (!at) return [];
    const number =
      slot.kind === 'landmark' ? scheme.landmarks.findIndex(({ id }) => id === slot.landmark) + 1 : '';
    return [
      { at, kind: slot.kind, number: String(number), inHand: !!hand && slotKey(hand) === slotKey(slot) },
    ];
  });
  const lines = ends.flatMap(([from, to]) => (from && to ? [[from, to] as const] : []));
  bench.stage.level(levelLine(bench));
  bench.stage.mark({ marks, lines, cross: bench.cross });
}

/** The line that is shown level: an axis of the scheme where its landmarks are placed, or the user's own. */
function levelLine({ record, scheme }: MeasuringBench): readonly [Place, Place] | undefined {
  const [from, to] = record.ownLine;
  if (record.level === 'own-line') return from && to ? [from, to] : undefined;
  const axis = scheme.axes.find(({ id }) => id === record.level);
  if (!axis) return undefined;
  const points = new Map(Object.entries(record.now.rounds[record.round] ?? {}));
  const [start, end] = [points.get(axis.from), points.get(axis.to)];
  if (start && end && distancePx(start, end) === 0) return undefined;
  const direction = findAxis(axis, points)?.direction;
  return (
    direction && [
      [0, 0],
      [direction[0]!, direction[1]!],
    ]
  );
}

function showHand(bench: MeasuringBench): void {
  const { hand, record, scheme, words } = bench;
  const isLost = hand?.kind === 'landmark' && record.now.absent.includes(hand.landmark);
  const landmark =
    hand?.kind === 'landmark' ? scheme.landmarks.find(({ id }) => id === hand.landmark) : undefined;
  find(bench, '[data-hand-name]').textContent = hand
    ? slotName(hand, scheme, words)
    : words.phrase('hand.none');
  find(bench, '[data-hand-definition]').textContent = isLost
    ? words.phrase('hand.break-hint')
    : (landmark?.definition ?? '');
  const absent = find(bench, '[data-do="absent"]') as HTMLButtonElement;
  absent.textContent = (isLost ? absent.dataset['present'] : absent.dataset['lost']) ?? '';
  absent.disabled = hand?.kind !== 'landmark';
  enable(bench, 'place', !!hand && record.now.picture !== null);
  enable(bench, 'remove', !!hand && placeOf(record, hand) !== undefined);
  enable(bench, 'undo', bench.canUndo);
  enable(bench, 'redo', bench.canRedo);
}

function showNames(bench: MeasuringBench): void {
  const { record, scheme } = bench;
  const isOwn = scheme.lineage === '';
  setValue(find(bench, '[data-scheme]'), isOwn ? '' : `${record.lineage} ${record.view}`);
  setValue(find(bench, '[data-specimen]'), record.now.specimen);
  find(bench, '[data-own]').hidden = !isOwn;
  for (const action of ['save-picture', 'turn-over'])
    find(bench, `[data-do="${action}"]`).hidden = record.now.picture === null;
  if (!isOwn) return;
  setValue(find(bench, '[data-view]'), record.view);
  setValue(find(bench, '[data-own-names]'), record.ownNames.join('\n'));
  const options = scheme.landmarks.map(({ id, name }) => [id, name] as const);
  for (const end of ['from', 'to']) {
    const select = find(bench, `[data-own-${end}]`) as HTMLSelectElement;
    showOptions(select, options, select.value);
  }
  find(bench, '[data-own-lengths]').replaceChildren(
    ...scheme.measurements.map(({ id, name }) => {
      const entry = document.createElement('li');
      const button = document.createElement('button');
      button.type = 'button';
      button.dataset['dropLength'] = id;
      button.textContent = bench.words.phrase('own.drop', { name });
      entry.append(button);
      return entry;
    }),
  );
}

function showScale(bench: MeasuringBench): void {
  const { record, words } = bench;
  const { scale, scaleMm } = record.now;
  setValue(find(bench, '[data-scale-mm]'), scaleMm > 0 ? String(scaleMm) : '');
  const mm = mmPerPx(record.now);
  const px = scale[0] && scale[1] ? distancePx(scale[0], scale[1]) : 0;
  const short = px < shortBarPx ? { px: words.number(px, 0), percent: words.number(100 / px, 1) } : undefined;
  find(bench, '[data-scale-said]').textContent =
    mm === undefined
      ? words.phrase('scale.wait')
      : [
          words.phrase('scale.is', { mm: words.number(mm, 4) }),
          ...(short ? [words.phrase('scale.short', short)] : []),
        ].join(' ');
}

function showLevel(bench: MeasuringBench): void {
  const { record, scheme, words } = bench;
  showOptions(
    find(bench, '[data-level]'),
    [
      ['', words.phrase('level.none')],
      ...scheme.axes.map(({ id, name }) => [id, name] as const),
      ['own-line', words.phrase('level.own')],
    ],
    record.level,
  );
  find(bench, '[data-level-wait]').hidden = record.level === '';
}

/** Whether leaving the page now would lose work that could not be kept. */
export function wouldLose({ kept, record }: MeasuringBench): boolean {
  return !kept && (hasWork(record.now) || record.finished.length > 0);
}

function find<T extends HTMLElement>(bench: MeasuringBench, selector: string): T {
  return bench.querySelector<T>(selector)!;
}

function enable(bench: MeasuringBench, action: string, can: boolean): void {
  find<HTMLButtonElement>(bench, `[data-do="${action}"]`).disabled = !can;
}

/** A field that is being typed in is left alone. */
function setValue(field: HTMLElement, value: string): void {
  const input = field as HTMLInputElement;
  if (document.activeElement !== field && input.value !== value) input.value = value;
}
