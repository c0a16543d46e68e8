import type { SaidValue } from './said-value.ts';
import { fineShares, shareAtLeast, shareAtMost, wideShares, type Share } from './shares.ts';
import { statement, type Statement } from './statement.ts';

/** An interval no wider than this, in parts of the way, is told by one place; a wider one by its two ends. */
const narrow = 1 / 6;

/** How near to an end of the way counts as level with it. */
const level = 0.03;

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

/**
 * A value as a place on the way between a trait's marks at 0 and 100, only as exact as its interval or limit allows; undefined
 * where nothing is known, or where what is known covers the whole way. Arguments are ids of shares.
 */
export function placeStatement(value: SaidValue): Statement | undefined {
  if (value.status === 'unknown') return undefined;
  if (value.status === 'bounded') return limitPlace(value.limits ?? {});
  const middle = value.estimate! / 100;
  const low = (value.interval[0] ?? value.estimate!) / 100;
  const high = (value.interval[1] ?? value.estimate!) / 100;
  return intervalPlace(middle, low, high);
}

function tell(form: Form, low?: Share, high?: Share): Statement {
  return statement(`phrase.${form}`, { low: low?.id, high: high?.id });
}

function intervalPlace(middle: number, low: number, high: number): Statement | undefined {
  return high - low <= narrow ? onePlace(middle, low, high) : twoEnds(low, high);
}

/** One place: the named share nearest to the middle that the interval holds, else the two names it lies between. */
function onePlace(middle: number, low: number, high: number): Statement {
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
function twoEnds(low: number, high: number): Statement | undefined {
  if (low > 1) return tell('beyond');
  if (high < 0) return tell('before');
  const [from, over] = [shareAtMost(wideShares, low), shareAtMost(wideShares, high)];
  if (high > 1) return from ? tell('fromBeyond', from) : low > 0 ? tell('startBeyond') : undefined;
  if (!over) return tell('startTo', undefined, shareAtLeast(wideShares, high));
  if (!from) return tell('startOver', undefined, over);
  return tell(over.at === high ? 'from' : 'fromOver', from, over);
}

/** A limit at a named share in its safe direction; undefined where the limit says nothing on the way. */
function limitPlace({ atLeast, atMost }: NonNullable<SaidValue['limits']>): Statement | undefined {
  if (atLeast !== undefined && atMost !== undefined)
    return intervalPlace((atLeast + atMost) / 200, atLeast / 100, atMost / 100);
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
