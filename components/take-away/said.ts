import { fromScale } from '../../analysis/traits/index.ts';
import type { Voice } from '../messages/say.ts';
import { valueText } from '../messages/value-text.ts';
import type { LiveData } from './live-data.ts';
import type { Recomputed } from './recompute.ts';
import { relativesValue } from './relatives-value.ts';

/** Relatives with less than this share are told together, as in the evidence. */
const smallestShare = 0.01;

/** How many relatives a sentence names. */
const namedMost = 4;

/** What relatives say of a hidden animal beside what it really reads. */
export function hiddenSentence(live: LiveData, each: Recomputed, voice: Voice): string {
  const truth = live.truth[each.taxon]!;
  if (each.open) return voice.say('takeAway.open', { truth });
  const mean = live.measured.mean[live.measured.taxon.indexOf(each.taxon)]!;
  const value = fromScale(live.scale, mean);
  const inside = each.interval[0] <= value && value <= each.interval[1];
  const estimate = estimateText(each, voice);
  return voice.say(inside ? 'takeAway.inside' : 'takeAway.outside', { estimate, truth });
}

/** What relatives say now of an animal that nobody measured, beside what they said with every skull; a limited one by its ends. */
export function unmeasuredSentence(
  now: Recomputed,
  before: Recomputed,
  limited: boolean,
  voice: Voice,
): string {
  const text = limited ? endsText : estimateText;
  return now.open && !limited
    ? voice.say('takeAway.nowOpen', { before: text(before, voice) })
    : voice.say('takeAway.now', { estimate: text(now, voice), before: text(before, voice) });
}

/** The relatives that an estimate rests on, largest share first, the small ones together. */
export function restsSentence(live: LiveData, { relatives }: Recomputed, voice: Voice): string {
  const named = relatives.filter(({ weight }) => weight >= smallestShare).slice(0, namedMost);
  const percent = (share: number) => voice.number(share * 100, 0);
  const parts = named.map(({ taxon, weight }) =>
    voice.say('takeAway.share', { name: live.names[taxon]!, share: percent(weight) }),
  );
  const rest = 1 - named.reduce((sum, { weight }) => sum + weight, 0);
  const others =
    relatives.length > named.length ? [voice.say('takeAway.rest', { share: percent(rest) })] : [];
  return voice.say('takeAway.rests', { list: [...parts, ...others].join(', ') });
}

/** An estimate with its brackets, rounded as everywhere. */
export function estimateText(each: Recomputed, voice: Voice): string {
  return valueText(relativesValue(each), voice).printed;
}

/** The ends alone, for an animal with a limit: it has no best guess. */
function endsText(each: Recomputed, voice: Voice): string {
  const [low, high] = each.interval;
  const value = relativesValue(each);
  const limits = { atLeast: low, atMost: high, specimen: '' };
  return valueText({ ...value, status: 'bounded', limits }, voice).printed;
}
