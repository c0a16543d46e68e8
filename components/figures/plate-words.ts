import { branchesAt } from './scene/branch-list.ts';
import { isMessage, type Voice } from '../messages/say.ts';
import { branchesBetween } from './scene/interval.ts';
import type { SkullAnchors } from './scene/focus.ts';
import type { MeasureWords } from './scene/measure-lines.ts';
import type { PlateWords } from './scene/compose-plate.ts';
import type { KeyWords } from './scene/key.ts';
import type { PlateLayout } from './scene/layout.ts';
import type { PlateData } from './scene/plate-data.ts';
import { wrap } from './scene/scene.ts';
import type { LineageView } from '../lineage/view.ts';

/** All words that a plate prints, in the page's language. */
export function plateWords(
  view: LineageView,
  data: PlateData,
  layout: PlateLayout,
  anchors: ReadonlyMap<string, SkullAnchors>,
): PlateWords {
  const { voice } = view;
  const [start, end] = [0, 100].map((at) => data.marks.find((mark) => mark.at === at)?.text ?? '');
  return {
    ruler: {
      start: start || landmark(view, view.trait.measured?.from),
      end: end || landmark(view, view.trait.measured?.end),
      unit: unitSign(voice, data.unit),
    },
    measure: (taxon) => measureWords(voice, anchors.get(taxon)),
    breakWord: voice.say('ruler.break'),
    key: keyWords(view, data),
    value: (taxon) => view.printed(taxon).printed,
    slice: (ageMa) =>
      voice.say('slice', { age: voice.number(ageMa, 0), count: branchesAt(data.branches, ageMa).length }),
    interval: (fromMa, toMa) =>
      voice.say('interval', {
        from: voice.number(fromMa, 0),
        to: voice.number(toMa, 0),
        count: branchesBetween(data.branches, fromMa, toMa).length,
      }),
    meaning: layout.title ? wrap(data.meaning, 40) : [],
  };
}

/** Sign of a unit; nothing for a bare number or a count. */
function unitSign(voice: Voice, unit: string): string {
  const key = `unit.${unit}`;
  return isMessage(key) ? voice.say(key) : '';
}

/** Name of a landmark in the page's language; nothing where the records name none. */
function landmark(view: LineageView, id: string | undefined): string {
  return view.text(view.lineage.scheme?.landmarks.find((each) => each.id === id)?.name);
}

function keyWords({ voice }: LineageView, data: PlateData): KeyWords {
  const always = ['measured', 'bounded', 'inferred', 'unknown', 'bar', 'bed'] as const;
  const rows = data.branches.some(({ ghost }) => ghost) ? [...always, 'ghost' as const] : always;
  return Object.fromEntries(
    rows.map((row) => [row, { word: voice.say(`key.${row}`), note: voice.say(`key.${row}.note`) }]),
  ) as KeyWords;
}

/** What a plate with room for a skull shows; where no skull can stand there, it says so. */
export function fullPlateDescription(view: LineageView, data: PlateData, drawn: number): string {
  const shown = plateDescription(view, data);
  return drawn > 0 ? shown : `${shown} ${view.voice.say('figure.undrawn')}`;
}

/** What the figure shows, in one paragraph, with the count of each status. */
export function plateDescription(view: LineageView, data: PlateData): string {
  const count = (status: string) => data.taxa.filter((taxon) => taxon.status === status).length;
  return view.voice.say('figure.description', {
    trait: data.label,
    measured: count('measured'),
    bounded: count('bounded'),
    inferred: count('inferred'),
    unknown: count('unknown'),
  });
}

/** `a` and `b`, as the card calls them too, with their lengths where the drawing is of one specimen. */
function measureWords(voice: Voice, anchors: SkullAnchors | undefined): MeasureWords {
  const { mm } = anchors ?? {};
  return mm
    ? { part: `a ${voice.number(mm.part, 1)} mm`, whole: `b ${voice.number(mm.whole, 1)} mm` }
    : { part: 'a', whole: 'b' };
}
