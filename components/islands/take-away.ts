import { hiddenIn, searchWith } from '../take-away/address.ts';
import type { LiveData } from '../take-away/live-data.ts';
import { liveVoice } from '../take-away/live-voice.ts';
import { findMiss, estimateWithout, type Recomputed } from '../take-away/recompute.ts';
import { findMissSummary, missSentence, type Miss } from '../take-away/misses.ts';
import { hiddenSentence, restsSentence, unmeasuredSentence } from '../take-away/said.ts';
import type { Voice } from '../messages/say.ts';
import { drawFromRelatives, drawAsMeasured } from './take-away-plates.ts';
import { showButtons, showText } from './take-away-parts.ts';

/**
 * Hides skulls and works their animals out again in the browser. The hidden animals stand in the address, so that a link
 * carries them and back and forward work; without script the table of the section says the same of single animals.
 */
class TakeAway extends HTMLElement {
  #live: LiveData | undefined;
  #voice!: Voice;
  #whole: ReadonlyMap<string, Recomputed> | undefined;
  #hidden: string[] = [];
  /** Counts changes, so that slow work for one that has passed is dropped. */
  #turn = 0;

  connectedCallback(): void {
    const live = JSON.parse(this.querySelector('.take-away-data')?.textContent ?? 'null') as LiveData | null;
    if (live?.schema !== 'lineament.live/1') return;
    this.#live = live;
    this.#voice = liveVoice(live.language, live.words);
    for (const part of this.querySelectorAll<HTMLElement>('.take-away-live')) part.hidden = false;
    for (const part of this.querySelectorAll<HTMLElement>('.take-away-unscripted')) part.hidden = true;
    document.querySelector('.left-out-table')?.removeAttribute('open');
    this.addEventListener('change', this.#onChange);
    document.addEventListener('click', this.#onClick);
    addEventListener('popstate', this.#follow);
    showButtons(live.measured.taxon, [], live.words);
    this.#follow();
  }

  disconnectedCallback(): void {
    this.#turn++;
    this.removeEventListener('change', this.#onChange);
    document.removeEventListener('click', this.#onClick);
    removeEventListener('popstate', this.#follow);
  }

  #onChange = (event: Event): void => {
    if (event.target instanceof HTMLInputElement) this.#toggle(event.target.value);
  };

  #onClick = (event: MouseEvent): void => {
    const target = event.target instanceof Element ? event.target : undefined;
    const taxon = target?.closest<HTMLElement>('[data-hide]')?.dataset['hide'];
    if (taxon !== undefined) this.#toggle(taxon);
    if (target?.closest('[data-put-back]')) {
      this.#go([]);
      this.#say(this.#voice.say('takeAway.saidAllBack'));
    }
  };

  #toggle(taxon: string): void {
    const isHidden = this.#hidden.includes(taxon);
    this.#go(isHidden ? this.#hidden.filter((each) => each !== taxon) : [...this.#hidden, taxon]);
    const name = this.#live!.names[taxon]!;
    const said = this.#row(taxon)?.querySelector('.take-away-said')?.textContent ?? '';
    this.#say(
      isHidden
        ? this.#voice.say('takeAway.saidBack', { name })
        : this.#voice.say('takeAway.saidHidden', { name, said }),
    );
  }

  #go(hidden: readonly string[]): void {
    const ordered = this.#live!.measured.taxon.filter((taxon) => hidden.includes(taxon));
    history.pushState(null, '', location.pathname + searchWith(location.search, ordered) + location.hash);
    this.#follow();
  }

  /** Shows what the address says. */
  #follow = (): void => {
    const live = this.#live!;
    const hidden = hiddenIn(location.search, live.measured.taxon);
    if (hidden.join() === this.#hidden.join()) return;
    this.#hidden = hidden;
    this.#whole ??= estimateWithout(live, new Set());
    const now = hidden.length > 0 ? estimateWithout(live, new Set(hidden)) : this.#whole;
    this.#showRows(now);
    this.#showPlates(now);
    this.#showFrame(now !== undefined);
    void this.#showSentence(++this.#turn);
  };

  #showRows(now: ReadonlyMap<string, Recomputed> | undefined): void {
    const live = this.#live!;
    const hidden = new Set(this.#hidden);
    for (const taxon of [...live.measured.taxon, ...live.unmeasured]) {
      const row = this.#row(taxon);
      const each = now?.get(taxon);
      const isMeasured = live.truth[taxon] !== undefined;
      const isShown = each !== undefined && (isMeasured ? hidden.has(taxon) : hidden.size > 0);
      const said = isShown ? this.#sentence(each, isMeasured, row) : '';
      showText(row?.querySelector('.take-away-said'), said);
      showText(
        row?.querySelector('.take-away-rests'),
        isShown && !each.open ? restsSentence(live, each, this.#voice) : '',
      );
      showText(document.querySelector(`[data-hidden-said="${CSS.escape(taxon)}"]`), said);
      const box = row?.querySelector('input');
      if (box) box.checked = hidden.has(taxon);
    }
    showButtons(live.measured.taxon, this.#hidden, live.words);
  }

  #sentence(each: Recomputed, isMeasured: boolean, row: HTMLElement | null): string {
    if (isMeasured) return hiddenSentence(this.#live!, each, this.#voice);
    const before = this.#whole?.get(each.taxon);
    const isLimited = row?.dataset['limited'] !== undefined;
    return before ? unmeasuredSentence(each, before, isLimited, this.#voice) : '';
  }

  #showPlates(now: ReadonlyMap<string, Recomputed> | undefined): void {
    const { measured, places, plates } = this.#live!;
    for (const [taxon, place] of Object.entries(places)) {
      const each = now?.get(taxon);
      const isMeasured = measured.taxon.includes(taxon);
      if (each && (this.#hidden.includes(taxon) || (!isMeasured && this.#hidden.length > 0)))
        drawFromRelatives(plates, place, each);
      else drawAsMeasured(plates, taxon);
    }
  }

  #showFrame(isEstimated: boolean): void {
    const count = this.#hidden.length;
    this.querySelector<HTMLElement>('.take-away-bar')!.hidden = count === 0;
    this.querySelector<HTMLElement>('.take-away-too-few')!.hidden = isEstimated;
    showText(this.querySelector('.take-away-count'), this.#voice.say('takeAway.hidden', { count }));
  }

  /** The leave-one-out sentence of those that are left, one animal a task, so that no touch waits for it. */
  async #showSentence(turn: number): Promise<void> {
    const live = this.#live!;
    const hidden = new Set(this.#hidden);
    const misses: Miss[] = [];
    for (const taxon of live.measured.taxon) {
      if (hidden.has(taxon)) continue;
      await new Promise((resolve) => setTimeout(resolve));
      if (turn !== this.#turn) return;
      const miss = findMiss(live, hidden, taxon);
      if (miss) misses.push(miss);
    }
    const summary = findMissSummary(misses);
    const sentence = this.querySelector('.take-away-sentence');
    showText(sentence, summary && hidden.size > 0 ? missSentence(summary, this.#voice) : '');
  }

  #row(taxon: string): HTMLElement | null {
    return this.querySelector<HTMLElement>(`[data-row="${CSS.escape(taxon)}"]`);
  }

  #say(text: string): void {
    this.querySelector('[role="status"]')!.textContent = text;
  }
}

customElements.define('take-away', TakeAway);
