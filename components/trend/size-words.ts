import type { CompiledSize } from '../../scripts/compile/contract.ts';
import type { LineageView } from '../lineage/view.ts';
import { figures } from '../messages/direction.ts';
import { isMessage, type Voice } from '../messages/say.ts';
import { changeText, datingText, probabilityText } from './change-text.ts';

/** What may be said of the trait in view and size, in one sentence; by default that one cannot tell. Empty where it declares no size. */
export function sizeSentence(view: LineageView): string {
  const { trait, voice } = view;
  const { size } = trait;
  if (!size) return '';
  const label = view.text(trait.label);
  const { slope } = size.trait;
  if (size.verdict === 'cannot-tell' || !slope) return voice.say('size.said.cannot-tell', { trait: label });
  const { change, low, high } = changeText(doubled(slope), trait, voice, size.verdict === 'smaller');
  return voice.say(`size.said.${size.verdict}`, {
    trait: label,
    size: view.text(size.label),
    change,
    low,
    high,
  });
}

/** Why nothing can be told, in words; nothing where something can. */
export function sizeReason(view: LineageView): string {
  const { size } = view.trait;
  return size?.verdict === 'cannot-tell' && size.reason ? reasonOf(size.reason, view) : '';
}

/** Letters of the two lengths of a ratio, as figures and cards have them. */
export const partLetters = ['a', 'b'] as const;

/** What both lengths of a ratio do as size doubles, a sentence each; none for another trait. */
export function partSentences(view: LineageView): string[] {
  const { size } = view.trait;
  return (size?.parts ?? []).map((part, index) => partSentence(part, partLetters[index]!, size!, view));
}

function partSentence(
  part: CompiledSize['parts'][number],
  letter: string,
  size: CompiledSize,
  view: LineageView,
): string {
  const { voice } = view;
  const names = { letter, part: view.text(part.label) };
  if (part.reason === 'is-the-size') return voice.say('size.partIsSize', names);
  if (!part.slope) return voice.say('size.partNone', { ...names, reason: reasonOf(part.reason ?? '', view) });
  const fitted = voice.say('size.part', {
    ...names,
    size: view.text(size.label),
    ...factorText(part.slope, voice),
  });
  return `${fitted} ${voice.say(`size.pace.${part.pace}`)}`;
}

type Slope = NonNullable<CompiledSize['trait']['slope']>;

/** A slope on the log of size as the change that goes with a doubling. */
function doubled({ perLog, interval }: Slope): { perMyr: number; interval: [number, number] } {
  return {
    perMyr: perLog * Math.LN2,
    interval: interval.map((end) => end! * Math.LN2) as [number, number],
  };
}

/** How many times a length is as long when size doubles, its range outward. */
function factorText({ perLog, interval }: Slope, voice: Voice): Record<'factor' | 'low' | 'high', string> {
  const times = (power: number) => 2 ** power;
  const [low, high] = interval as [number, number];
  return {
    factor: voice.number(times(perLog), 2),
    low: voice.number(Math.floor(times(low) * 100) / 100, 2),
    high: voice.number(Math.ceil(times(high) * 100) / 100, 2),
  };
}

/** Cells of the arithmetic: what, tree, dating, change for a doubling of size, range, chance; a row without a slope says why. */
export function sizeRows(view: LineageView): string[][] {
  const { trait, voice } = view;
  const { size } = trait;
  if (!size) return [];
  const ofTrait = (slope: Slope) => changeText(doubled(slope), trait, voice);
  const ofPart = (slope: Slope) => {
    const { factor, low, high } = factorText(slope, voice);
    return { change: `× ${factor}`, low, high };
  };
  return [
    ...seriesRows(view.text(trait.label), size.trait, ofTrait, view),
    ...size.parts.flatMap((part, index) =>
      seriesRows(`${partLetters[index]}, ${view.text(part.label)}`, part, ofPart, view),
    ),
  ];
}

function seriesRows(
  what: string,
  { rows }: CompiledSize['trait'],
  textOf: (slope: Slope) => { change: string; low: string; high: string },
  view: LineageView,
): string[][] {
  const { voice } = view;
  return rows.map(({ tree, dating, slope, reason }) => {
    const start = [what, tree, datingText(dating, voice)];
    if (!slope) return [...start, reasonOf(reason ?? '', view), '', ''];
    const { change, low, high } = textOf(slope);
    return [
      ...start,
      change,
      figures(`${low} – ${high}`, voice.language),
      probabilityText(slope.pValue, voice),
    ];
  });
}

/** A reason in words: of size where it has words of its own, else those of a trend. */
function reasonOf(code: string, { voice }: LineageView): string {
  const key = [`size.reason.${code}`, `trend.reason.${code}`].find(isMessage);
  return key ? voice.say(key) : code;
}
