import type { CompiledSize } from '../../scripts/compile/contract.ts';
import type { LineageView } from '../lineage/view.ts';
import { isMessage } from '../messages/say.ts';
import { changeText } from './change-text.ts';

/** What may be said of the trait in view and size, in one sentence; by default that one cannot tell. Empty where it declares no size. */
export function sizeSentence(view: LineageView): string {
  const { trait, voice } = view;
  const { size } = trait;
  if (!size) return '';
  const label = view.text(trait.label);
  const { slope } = size.trait;
  if (size.verdict === 'cannot-tell' || !slope) return voice.say('size.said.cannot-tell', { trait: label });
  const doubled = {
    perMyr: slope.perLog * Math.LN2,
    interval: slope.interval.map((end) => end! * Math.LN2) as [number, number],
  };
  const { change, low, high } = changeText(doubled, trait, voice, size.verdict === 'smaller');
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
  if (!part.slope) return voice.say('size.partNone', { ...names, reason: reasonOf(part.reason ?? '', view) });
  const times = (power: number) => 2 ** power;
  const [low, high] = part.slope.interval as [number, number];
  const fitted = voice.say('size.part', {
    ...names,
    size: view.text(size.label),
    factor: voice.number(times(part.slope.perLog), 2),
    low: voice.number(Math.floor(times(low) * 100) / 100, 2),
    high: voice.number(Math.ceil(times(high) * 100) / 100, 2),
  });
  return `${fitted} ${voice.say(`size.pace.${part.pace}`)}`;
}

/** A reason in words: of size where it has words of its own, else those of a trend. */
function reasonOf(code: string, { voice }: LineageView): string {
  const key = [`size.reason.${code}`, `trend.reason.${code}`].find(isMessage);
  return key ? voice.say(key) : code;
}
