import type { CompiledTrend } from '../../scripts/compile/contract.ts';
import type { LineageView } from '../lineage/view.ts';
import { figures } from '../messages/direction.ts';
import { isMessage } from '../messages/say.ts';
import { changeText, datingText, probabilityText } from './change-text.ts';

/** What may be said of the trend of the trait in view, in one sentence; by default that one cannot tell. */
export function trendSentence(view: LineageView): string {
  const { trait, voice } = view;
  const label = view.text(trait.label);
  const { verdict, rows, taxa } = trait.trend ?? { verdict: 'cannot-tell' as const, rows: [], taxa: 0 };
  const slope = rows[0]?.slope;
  if (verdict === 'cannot-tell' || !slope) return voice.say('trend.said.cannot-tell', { trait: label });
  const { change, low, high } = changeText(slope, trait, voice, verdict === 'falls');
  return voice.say(`trend.said.${verdict}`, { trait: label, taxa, change, low, high });
}

/** Why nothing can be told, in words; nothing where something can. */
export function trendReason(view: LineageView): string {
  const { trend } = view.trait;
  return trend?.verdict === 'cannot-tell' ? reasonText(trend.reason ?? 'no-tree', view) : '';
}

/** A code of a reason in words, or the code itself where it has none. */
function reasonText(code: string, { voice }: LineageView): string {
  const key = `trend.reason.${code}`;
  return isMessage(key) ? voice.say(key) : code;
}

/** One row of the arithmetic in words. */
export interface TrendRowText {
  tree: string;
  dating: string;
  slope: string;
  range: string;
  chance: string;
  ages: string;
}

/** The slope on every tree and rule of dating, in words; a row without a slope says why. */
export function trendRows(view: LineageView): TrendRowText[] {
  return (view.trait.trend?.rows ?? []).map((row) => rowText(row, view));
}

function rowText(row: CompiledTrend['rows'][number], view: LineageView): TrendRowText {
  const { voice, trait } = view;
  const dating = datingText(row.dating, voice);
  const { sets, rising, falling } = row.ages;
  const start = { tree: row.tree, dating };
  if (!row.slope)
    return { ...start, slope: reasonText(row.reason ?? '', view), range: '', chance: '', ages: '' };
  const { change, low, high } = changeText(row.slope, trait, voice);
  return {
    ...start,
    slope: change,
    range: figures(`${low} – ${high}`, voice.language),
    chance: probabilityText(row.slope.pValue, voice),
    ages: voice.say('trend.table.of', { same: row.slope.perMyr > 0 ? rising : falling, sets }),
  };
}

/** Both ends of the fitted line in words; nothing where no line is told. */
export function fittedText(view: LineageView): string {
  const { trait, voice } = view;
  const { trend } = trait;
  const [first, last] = [trend?.line[0], trend?.line.at(-1)];
  if (!trend || trend.verdict === 'cannot-tell' || !first || !last) return '';
  const unit = isMessage(`unit.${trait.unit}`) ? voice.say(`unit.${trait.unit}` as 'unit.mm') : '';
  const value = (number: number) =>
    `${voice.number(number, number >= 10 ? 0 : 1)}${unit && trait.unit !== 'mm' ? unit : unit && `\u00a0${unit}`}`;
  const [old, young] = [voice.number(first.at, 0), voice.number(last.at, 0)];
  const ends = { from: value(first.median), to: value(last.median), old };
  return last.at === 0 ? voice.say('trend.fittedToday', ends) : voice.say('trend.fitted', { ...ends, young });
}

/** Kendall's tau in words; nothing where it was not worked out. */
export function rankText({ trait, voice }: LineageView): string {
  const { rank } = trait.trend ?? {};
  if (!rank) return '';
  return voice.say('trend.rank', {
    tau: voice.number(rank.tau, 2),
    draws: rank.draws,
    share: voice.number(rank.pValue * 100, rank.pValue < 0.1 ? 1 : 0),
  });
}
