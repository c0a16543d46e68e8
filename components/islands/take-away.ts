import { hiddenIn, searchWith } from '../take-away/address.ts';
import type { LiveData } from '../take-away/live-data.ts';
import { liveVoice } from '../take-away/live-voice.ts';
import { findMiss, estimateWithout, type Recomputed } from '../take-away/recompute.ts';
import { leftOutStatement, type Miss } from '../../analysis/statements/index.ts';
import { sayStatement } from '../messages/say-statement.ts';
import type { Voice } from '../messages/say.ts';
import { drawFromRelatives, drawAsMeasured } from './take-away-plates.ts';
import { showButtons, showText } from './take-away-parts.ts';
import { stillness } from './stillness.ts';
import { isAsked, rowOf, showRows, type Shown } from './take-away-rows.ts';

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
  #near: IntersectionObserver | undefined;

  connectedCallback(): void {
    const live = JSON.parse(this.querySelector('.take-away-data')?.textContent ?? 'null') as LiveData | null;
    if (live?.schema !== 'lineament.live/1') return;
    this.#live = live;
    this.#voice = liveVoice(live.language, live.words);
    const early = [...this.querySelectorAll<HTMLInputElement>('[data-ticked]')].map(({ value }) => value);
    this.addEventListener('change', this.#onChange);
    document.addEventListener('click', this.#onClick);
    addEventListener('popstate', this.#follow);
    showButtons(live.measured.taxon, [], live.words);
    this.#follow();
    for (const taxon of early) if (!this.#hidden.includes(taxon)) this.#toggle(taxon);
    this.#near = new IntersectionObserver(([entry]) => entry?.isIntersecting && void this.#prepare(), {
      rootMargin: '400px',
    });
    this.#near.observe(this);
  }

  /** The first estimate is the slowest: it is made when the section is near and nobody scrolls, before any touch. */
  async #prepare(): Promise<void> {
    this.#near?.disconnect();
    await stillness();
    if (this.isConnected) this.#estimateWhole();
  }

  disconnectedCallback(): void {
    this.#turn++;
    this.#near?.disconnect();
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
    const said =
      rowOf(this, taxon)?.querySelector('.take-away-said')?.textContent || this.#voice.say('takeAway.tooFew');
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

  #estimateWhole(): void {
    this.#near?.disconnect();
    this.#whole ??= estimateWithout(this.#live!, new Set());
  }

  /** Shows what the address says. */
  #follow = (): void => {
    const live = this.#live!;
    const hidden = hiddenIn(location.search, live.measured.taxon);
    if (hidden.join() === this.#hidden.join()) return;
    this.#hidden = hidden;
    this.#estimateWhole();
    const now = hidden.length > 0 ? estimateWithout(live, new Set(hidden)) : this.#whole;
    const shown = { hidden: new Set(hidden), whole: this.#whole, now };
    showRows(this, live, this.#voice, shown);
    showButtons(live.measured.taxon, hidden, live.words);
    this.#showPlates(shown);
    this.#showFrame(now !== undefined);
    void this.#showSentence(++this.#turn);
  };

  #showPlates(shown: Shown): void {
    const { places, plates } = this.#live!;
    for (const [taxon, place] of Object.entries(places)) {
      const each = isAsked(this.#live!, shown, taxon) ? shown.now?.get(taxon) : undefined;
      if (each) drawFromRelatives(plates, place, each);
      else drawAsMeasured(plates, taxon);
    }
  }

  #showFrame(isEstimated: boolean): void {
    const count = this.#hidden.length;
    this.querySelector<HTMLElement>('.take-away-bar')!.hidden = count === 0;
    // A class, and no :has() in the sheet: that one is looked for again wherever a class changes, at every step of the story.
    document.documentElement.classList.toggle('skulls-hidden', count > 0);
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
    const summary = leftOutStatement(misses);
    const sentence = this.querySelector('.take-away-sentence');
    showText(sentence, summary && hidden.size > 0 ? sayStatement(summary, this.#voice) : '');
  }

  #say(text: string): void {
    this.querySelector('[role="status"]')!.textContent = text;
  }
}

customElements.define('take-away', TakeAway);
