import { withNow } from '../measuring/bench-edits.ts';
import { idOfName } from '../measuring/bench-scheme.ts';
import type { Place } from '../measuring/place.ts';
import { nextOpen, slotKey } from '../measuring/point-slots.ts';
import { takeAway, type AwayTexts } from './measuring-bench-away.ts';
import { openPractice } from './measuring-bench-picture.ts';
import { wouldLose } from './measuring-bench-show.ts';
import type { MeasuringBench } from './measuring-bench.ts';

const enlargement = 1.5;

const directions: Readonly<Record<string, Place>> = {
  left: [-1, 0],
  right: [1, 0],
  up: [0, -1],
  down: [0, 1],
};

/** What each button does, by its name. */
const actions: Readonly<Record<string, (bench: MeasuringBench) => void>> = {
  practice: (bench) => void openPractice(bench),
  'save-picture': (bench) => bench.savePicture(),
  'turn-over': (bench) => void bench.turnOver(),
  previous: (bench) => bench.step(-1),
  next: (bench) => bench.step(1),
  place: (bench) => bench.tap(bench.cross),
  remove: (bench) => bench.removeHeld(),
  absent: (bench) => bench.toggleAbsent(),
  undo: (bench) => bench.goBack(),
  redo: (bench) => bench.goOn(),
  larger: (bench) => bench.stage.enlarge(enlargement, bench.cross),
  smaller: (bench) => bench.stage.enlarge(1 / enlargement, bench.cross),
  whole: (bench) => bench.stage.whole(),
  'add-round': (bench) => bench.startRound(),
  'add-length': addLength,
  finish: (bench) => void bench.finish(),
  forget: (bench) => void bench.forget(),
};

/** Ties buttons, fields, keys and dropped files to the bench. */
export function listenToBench(bench: MeasuringBench): void {
  bench.addEventListener('click', (event) => onClick(bench, event));
  bench.addEventListener('change', (event) => onChange(bench, event.target as HTMLInputElement));
  bench.addEventListener('keydown', (event) => onKey(bench, event));
  // a file that misses the stage must not take the page's place
  document.addEventListener('dragover', (event) => event.preventDefault());
  document.addEventListener('drop', (event) => {
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (file) void bench.open(file);
  });
  window.addEventListener('beforeunload', (event) => {
    if (wouldLose(bench)) event.preventDefault();
  });
}

function onClick(bench: MeasuringBench, event: MouseEvent): void {
  const button = event.target instanceof Element ? event.target.closest<HTMLElement>('button') : null;
  if (!button) return;
  const { do: action = '', slot, dropLength } = button.dataset;
  if (slot !== undefined) bench.take(bench.slots().find((each) => slotKey(each) === slot));
  if (dropLength !== undefined) removeLength(bench, dropLength);
  const direction = directions[action];
  if (direction) move(bench, direction, 1);
  const [how, what] = action.split(' ');
  if (how === 'copy' || how === 'download') void takeAway(bench, how, what as keyof AwayTexts);
  actions[action]?.(bench);
}

function move(bench: MeasuringBench, [dx, dy]: Place, times: number): void {
  const step = Number(bench.querySelector<HTMLSelectElement>('[data-step]')!.value) * times;
  bench.nudge([dx * step, dy * step]);
}

/** What each field changes, by the mark that it carries. */
const fields: Readonly<Record<string, (bench: MeasuringBench, field: HTMLInputElement) => void>> = {
  file: (bench, field) => {
    const file = field.files?.[0];
    // the same file may be chosen again
    if (file) void bench.open(file).finally(() => (field.value = ''));
  },
  scheme: (bench, { value }) => {
    const [lineage = '', view = 'left-lateral'] = value === '' ? [] : value.split(' ');
    void bench.chooseScheme(lineage, view);
  },
  specimen: (bench, field) => {
    bench.edit(withNow(bench.record, { specimen: idOfName(field.value) }));
    field.value = bench.record.now.specimen;
  },
  view: (bench, { value }) => bench.edit({ ...bench.record, view: idOfName(value) || 'left-lateral' }),
  ownNames: (bench, { value }) => {
    bench.edit({ ...bench.record, ownNames: value.split('\n').filter((name) => name.trim() !== '') });
    bench.take(nextOpen(bench.record, bench.slots()));
  },
  scaleMm: (bench, { valueAsNumber }) =>
    bench.edit(withNow(bench.record, { scaleMm: valueAsNumber > 0 ? valueAsNumber : 0 })),
  level: (bench, { value }) => {
    bench.edit({ ...bench.record, level: value });
    const isOwn = value === 'own-line' && !bench.record.ownLine[0];
    bench.take(isOwn ? { kind: 'line', end: 0 } : (bench.hand ?? nextOpen(bench.record, bench.slots())));
  },
  round: (bench, { value }) => {
    bench.edit({ ...bench.record, round: Number(value) });
    bench.take(nextOpen(bench.record, bench.slots()));
  },
};

function onChange(bench: MeasuringBench, field: HTMLInputElement): void {
  for (const mark of Object.keys(field.dataset)) fields[mark]?.(bench, field);
}

function onKey(bench: MeasuringBench, event: KeyboardEvent): void {
  const target = event.target as HTMLElement;
  const isTyping = target.matches('input, textarea, select');
  if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'z' && !isTyping) {
    event.preventDefault();
    if (event.shiftKey) bench.goOn();
    else bench.goBack();
  } else if (target.matches('[data-stage]') && !event.ctrlKey && !event.metaKey && !event.altKey) {
    if (stageKey(bench, event.key, event.shiftKey ? 10 : 1)) event.preventDefault();
  }
}

const keyActions: Readonly<Record<string, string>> = {
  Enter: 'place',
  ' ': 'place',
  '+': 'larger',
  '=': 'larger',
  '-': 'smaller',
  '0': 'whole',
  Delete: 'remove',
  Backspace: 'remove',
};

/** Keys of the picture, which work only while it has the focus. True where the key was one of them. */
function stageKey(bench: MeasuringBench, key: string, times: number): boolean {
  const direction = directions[/^Arrow(\w+)$/.exec(key)?.[1]?.toLowerCase() ?? ''];
  if (direction) move(bench, direction, times);
  const action = keyActions[key];
  if (action !== undefined && bench.record.now.picture) actions[action]!(bench);
  return direction !== undefined || action !== undefined;
}

function addLength(bench: MeasuringBench): void {
  const [from, to] = ['from', 'to'].map(
    (end) => bench.querySelector<HTMLSelectElement>(`[data-own-${end}]`)!.value,
  ) as [string, string];
  const { ownLengths } = bench.record;
  if (from === to || ownLengths.some((each) => each.from === from && each.to === to)) return;
  bench.edit({ ...bench.record, ownLengths: [...ownLengths, { from, to }] });
}

function removeLength(bench: MeasuringBench, id: string): void {
  const { ownLengths } = bench.record;
  bench.edit({ ...bench.record, ownLengths: ownLengths.filter(({ from, to }) => `${from} ${to}` !== id) });
}
