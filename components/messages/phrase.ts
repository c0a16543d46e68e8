import type { CompiledValue } from '../../scripts/compile/contract.ts';
import { fineShares, shareAtLeast, shareAtMost, wideShares, type Share } from './phrase-shares.ts';
import type { Voice } from './say.ts';

/** What a trait's axis runs between, in words: its marks at 0 and at 100. */
export interface AxisWords {
  start: string;
  end: string;
}

/** An interval no wider than this, in parts of the way, is told by one place; a wider one by its two ends. */
const narrow = 1 / 6;

/** How near to an end of the way counts as level with it. */
const level = 0.03;

/**
 * A value as a place on the way between the marks at 0 and 100, only as exact as its interval or limit allows;
 * undefined where nothing is known, or where what is known covers the whole way.
 */
export function phraseOf(value: CompiledValue, axis: AxisWords, voice: Voice): string | undefined {
  const tell = speaker(axis, voice);
  if (value.status === 'unknown') return undefined;
  if (value.status === 'bounded') return limitPhrase(value.limits ?? {}, tell);
  const middle = value.estimate! / 100;
  const low = (value.interval[0] ?? value.estimate!) / 100;
  const high = (value.interval[1] ?? value.estimate!) / 100;
  return intervalPhrase(middle, low, high, tell);
}

function intervalPhrase(middle: number, low: number, high: number, tell: Tell): string | undefined {
  return high - low <= narrow ? placePhrase(middle, low, high, tell) : rangePhrase(low, high, tell);
}

type Tell = (form: Form, low?: Share, high?: Share) => string;
type Form =
  | 'about'
  | 'between'
  | 'startTo'
  | 'from'
  | 'fromOver'
  | 'startOver'
  | 'fromBeyond'
  | 'toEnd'
  | 'startBeyond'
  | 'levelStart'
  | 'levelEnd'
  | 'before'
  | 'beyond'
  | 'atLeast'
  | 'atMost'
  | 'beyondStart'
  | 'beforeEnd';

function speaker(axis: AxisWords, voice: Voice): Tell {
  const name = (share: Share | undefined) => (share ? voice.say(share.message) : '');
  return (form, low, high) =>
    contracted(voice.say(`phrase.${form}`, { ...axis, low: name(low), high: name(high) }), voice.language);
}

/** Spanish joins its preposition and article: 'de el' is 'del', 'a el' is 'al'. */
function contracted(text: string, language: string): string {
  if (!language.startsWith('es')) return text;
  return text.replace(/\bde el\b/g, 'del').replace(/\ba el\b/g, 'al');
}

/** One place: the named share nearest to the middle that the interval holds, else the two names it lies between. */
function placePhrase(middle: number, low: number, high: number, tell: Tell): string {
  const holds = (at: number) => low <= at && at <= high;
  if (holds(1) && Math.abs(middle - 1) <= level) return tell('levelEnd');
  if (holds(0) && Math.abs(middle) <= level) return tell('levelStart');
  if (low > 1) return tell('beyond');
  if (high < 0) return tell('before');
  const named = fineShares.filter(({ at }) => holds(at));
  const distance = ({ at }: Share) => Math.abs(at - middle);
  if (named.length > 0)
    return tell(
      'about',
      named.reduce((a, b) => (distance(b) < distance(a) ? b : a)),
    );
  const [below, above] = [shareAtMost(fineShares, low), shareAtLeast(fineShares, high)];
  if (below && above) return tell('between', below, above);
  if (!below) return tell('startTo', undefined, above);
  return tell(high > 1 ? 'fromBeyond' : 'toEnd', below);
}

/** Two ends: the lower at the name below it, the upper as over the name below it. */
function rangePhrase(low: number, high: number, tell: Tell): string | undefined {
  if (low > 1) return tell('beyond');
  if (high < 0) return tell('before');
  const [from, over] = [shareAtMost(wideShares, low), shareAtMost(wideShares, high)];
  if (high > 1) return from ? tell('fromBeyond', from) : low > 0 ? tell('startBeyond') : undefined;
  if (!over) return tell('startTo', undefined, shareAtLeast(wideShares, high));
  if (!from) return tell('startOver', undefined, over);
  return tell(over.at === high ? 'from' : 'fromOver', from, over);
}

/** A limit at a named share in its safe direction; undefined where the limit says nothing on the way. */
function limitPhrase({ atLeast, atMost }: { atLeast?: number; atMost?: number }, tell: Tell) {
  if (atLeast !== undefined && atMost !== undefined)
    return intervalPhrase((atLeast + atMost) / 200, atLeast / 100, atMost / 100, tell);
  if (atLeast !== undefined) {
    if (atLeast > 100) return tell('beyond');
    const share = shareAtMost(fineShares, atLeast / 100);
    return share ? tell('atLeast', share) : atLeast > 0 ? tell('beyondStart') : undefined;
  }
  if (atMost === undefined || atMost > 100) return undefined;
  if (atMost < 0) return tell('before');
  const share = shareAtLeast(fineShares, atMost / 100);
  return share ? tell('atMost', share) : tell('beforeEnd');
}
