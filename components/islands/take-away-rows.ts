import type { Voice } from '../messages/say.ts';
import type { LiveData } from '../take-away/live-data.ts';
import type { Recomputed } from '../take-away/recompute.ts';
import { hiddenSentence, restsSentence, unmeasuredSentence } from '../take-away/said.ts';
import { showText } from './take-away-parts.ts';

type Answers = ReadonlyMap<string, Recomputed> | undefined;

/** What relatives say with every skull seen, and without the hidden ones. */
export interface Shown {
  hidden: ReadonlySet<string>;
  whole: Answers;
  now: Answers;
}

/** Writes what relatives say in the row and the card of each animal that is hidden or that nobody measured. */
export function showRows(section: HTMLElement, live: LiveData, voice: Voice, shown: Shown): void {
  for (const taxon of [...live.measured.taxon, ...live.unmeasured]) {
    const row = rowOf(section, taxon);
    const each = isAsked(live, shown, taxon) ? shown.now?.get(taxon) : undefined;
    const isLimited = row?.dataset['limited'] !== undefined;
    const said = each ? sentence(live, voice, each, isLimited ? 'limited' : 'free', shown.whole) : '';
    showText(row?.querySelector('.take-away-said'), said);
    showText(
      row?.querySelector('.take-away-rests'),
      each && !each.open ? restsSentence(live, each, voice) : '',
    );
    showText(document.querySelector(`[data-hidden-said="${CSS.escape(taxon)}"]`), said);
    const box = row?.querySelector('input');
    if (box) box.checked = shown.hidden.has(taxon);
  }
}

/** Whether an animal is to be seen as its relatives see it: hidden, or unmeasured while others are hidden. */
export function isAsked({ truth }: LiveData, { hidden }: Pick<Shown, 'hidden'>, taxon: string): boolean {
  return truth[taxon] === undefined ? hidden.size > 0 : hidden.has(taxon);
}

/** The row of an animal in the list. */
export function rowOf(section: HTMLElement, taxon: string): HTMLElement | null {
  return section.querySelector<HTMLElement>(`[data-row="${CSS.escape(taxon)}"]`);
}

function sentence(
  live: LiveData,
  voice: Voice,
  each: Recomputed,
  kind: 'limited' | 'free',
  whole: Answers,
): string {
  if (live.truth[each.taxon] !== undefined) return hiddenSentence(live, each, voice);
  const before = whole?.get(each.taxon);
  return before ? unmeasuredSentence(each, before, kind === 'limited', voice) : '';
}
