import { onFocusWish } from './focus-wish.ts';
import { restorationOf, type RestorationWish } from './skull-restoration.ts';
import { bringSkull } from './skull-shelf.ts';

/** What the plate shows: animals in focus (the first brings its skull), a slice, the way it shows them, and the trait if it is not the page's own. */
interface Shown {
  taxa: string[];
  slice: string;
  show: string;
  trait: string;
}

/** How far from a mark a touch may fall, in CSS pixels. */
const reachPx = 22;

/**
 * The pinned figure. Markup and style sheet show the opening state without it; this keeps the figure in step with the
 * story, and lets a visitor pick a mark or walk from animal to animal.
 */
class LineagePlate extends HTMLElement {
  #watcher: IntersectionObserver | undefined;
  #stopWishes: (() => void) | undefined;
  #shown: Shown = { taxa: [], slice: '', show: 'figure', trait: '' };
  #step: Shown = this.#shown;
  #wish: RestorationWish | undefined;
  /** An open card has asked for its animal, which stays while the story scrolls on beneath. */
  #isHeld = false;

  connectedCallback(): void {
    this.#step = { taxa: [this.dataset['first'] ?? ''], slice: '', show: 'figure', trait: '' };
    this.#display(this.#step);
    this.#watchSteps();
    addEventListener('resize', this.#watchSteps);
    this.addEventListener('click', this.#onClick);
    this.#stopWishes = onFocusWish((taxon) => {
      this.#isHeld = taxon !== undefined;
      this.#display(
        taxon === undefined
          ? this.#step
          : { taxa: [taxon], slice: '', show: 'measurement', trait: this.#shown.trait },
      );
    });
    for (const button of this.querySelectorAll<HTMLElement>('[data-walk], .restoration'))
      button.hidden = false;
    // Skulls of the steps to come are fetched while the visitor reads.
    const later = [...document.querySelectorAll<HTMLElement>('.step')].map(
      (step) => step.dataset['focus']?.split(' ')[0],
    );
    setTimeout(() => later.forEach((taxon) => this.#bring(taxon)), 1500);
  }

  disconnectedCallback(): void {
    this.#watcher?.disconnect();
    this.#stopWishes?.();
    removeEventListener('resize', this.#watchSteps);
    this.removeEventListener('click', this.#onClick);
  }

  #watchSteps = (): void => {
    this.#watcher?.disconnect();
    this.#watcher = new IntersectionObserver((entries) => this.#follow(entries), {
      rootMargin: this.#readingBand(),
    });
    for (const step of document.querySelectorAll<HTMLElement>('.opening, .step')) this.#watcher.observe(step);
  };

  /** The band of the screen in which a step counts as read: under the figure where it stands above, else the middle. */
  #readingBand(): string {
    const above = getComputedStyle(this).getPropertyValue('--figure-above').trim() === '1';
    if (!above) return '-46% 0px -46% 0px';
    const figure = Math.min(this.getBoundingClientRect().height, innerHeight);
    const rest = innerHeight - figure;
    return `${-Math.round(figure + rest * 0.2)}px 0px ${-Math.round(rest * 0.6)}px 0px`;
  }

  #follow(entries: IntersectionObserverEntry[]): void {
    for (const { isIntersecting, target } of entries) {
      if (!isIntersecting) continue;
      const { focus = '', slice = '', show = 'figure', trait = '' } = (target as HTMLElement).dataset;
      for (const step of document.querySelectorAll('.step'))
        step.classList.toggle('current', step === target);
      this.#step = { taxa: focus.split(/\s+/).filter(Boolean), slice, show, trait };
      if (!this.#isHeld && !this.#holdsFocus()) this.#display(this.#step);
    }
  }

  /** Whether the keyboard is in the caption or the list, which must not vanish under it. */
  #holdsFocus(): boolean {
    const held = document.activeElement?.closest('.captions, .plate-list');
    return held !== null && held !== undefined && this.contains(held);
  }

  /**
   * Shows what a step or the visitor asks for. What belongs to one animal is told to its parts alone: said of the whole figure
   * it would have every part of every animal looked at again.
   */
  #display(shown: Shown): void {
    this.#shown = shown;
    const [first] = shown.taxa;
    if (first !== this.#wish?.taxon) this.#wish = undefined;
    const isFragment = this.querySelector(`.caption[data-fragment][data-of="${CSS.escape(first ?? '')}"]`);
    const restoration = restorationOf(first, shown.show, isFragment !== null, this.#wish);
    for (const part of this.querySelectorAll<HTMLElement>('[data-of]')) {
      const of = part.dataset['of']!;
      const isFirst = of === first;
      part.classList.toggle('in-focus', isFirst || (shown.slice !== '' && of === shown.slice));
      part.classList.toggle('near-focus', shown.taxa.includes(of));
      part.classList.toggle('with-measure', isFirst && shown.show === 'measurement');
      part.classList.toggle('bone-only', isFirst && restoration === 'bone');
      // Written only where it changes: the same word written again costs as much as another.
      if (part.classList.contains('caption') && part.hidden === isFirst) part.hidden = !isFirst;
    }
    this.dataset['show'] = shown.show;
    this.dataset['restoration'] = restoration;
    this.toggleAttribute('data-cut', shown.slice !== '');
    this.toggleAttribute('data-from-break', this.querySelector('.in-focus .ruler-break') !== null);
    this.#bringTrait(shown.trait);
    this.#bring(first);
  }

  /** Shows the plate of a trait, and that alone; one that has none on the page leaves the first. */
  #bringTrait(trait: string): void {
    const plates = [...this.querySelectorAll<HTMLElement>('.trait-plate')];
    const wanted = plates.find((plate) => plate.dataset['trait'] === trait) ?? plates[0];
    for (const plate of plates) plate.hidden = plate !== wanted;
  }

  /** The plate in view with its captions: that of a trait, or the only one. */
  #plate(): HTMLElement {
    return this.querySelector<HTMLElement>('.trait-plate:not([hidden])') ?? this;
  }

  /** Has the skull of an animal brought, if it has one. */
  #bring(taxon: string | undefined): void {
    const { drawn = '', skulls } = this.dataset;
    const shelf = document.querySelector('.skull-shelf defs');
    if (taxon && skulls && shelf && drawn.split(' ').includes(taxon)) void bringSkull(taxon, skulls, shelf);
  }

  #onClick = (event: MouseEvent): void => {
    const target = event.target instanceof Element ? event.target : undefined;
    const walk = target?.closest<HTMLElement>('[data-walk]');
    if (walk) return this.#choose(this.#neighbour(Number(walk.dataset['walk'])));
    if (target?.closest('.restoration')) return this.#turnRestoration();
    const small = target?.closest<SVGElement>('.layer-small-skulls');
    if (small) return this.#choose(small.dataset['of']);
    if (target?.closest('svg')) this.#choose(this.#nearest(event.clientX, event.clientY));
  };

  /** Shows restored parts where they are hidden, and hides them where they are shown. */
  #turnRestoration(): void {
    const [taxon] = this.#shown.taxa;
    if (taxon === undefined) return;
    this.#wish = { taxon, restoration: this.dataset['restoration'] === 'bone' ? 'restored' : 'bone' };
    this.#display(this.#shown);
  }

  /** Brings one animal into focus by the visitor's own wish, and says so to those who listen. */
  #choose(taxon: string | undefined): void {
    if (taxon === undefined) return;
    this.#display({ taxa: [taxon], slice: '', show: 'measurement', trait: this.#shown.trait });
    const plate = this.#plate();
    const spoken = plate.querySelector<HTMLElement>('.caption:not([hidden])')?.dataset['spoken'];
    const status = plate.querySelector('[role="status"]');
    if (spoken && status) status.textContent = spoken;
  }

  /** The animal before or after the one in focus, in the order of the captions: oldest first. */
  #neighbour(by: number): string | undefined {
    const captions = this.#plate().querySelectorAll<HTMLElement>('.caption');
    const order = [...captions].map((caption) => caption.dataset['of']!);
    const at = order.indexOf(this.#shown.taxa[0] ?? '');
    return order[(at + by + order.length) % order.length];
  }

  /** The animal whose mark is nearest to a point of the screen, if one is within reach. */
  #nearest(x: number, y: number): string | undefined {
    let nearest: string | undefined;
    let distance = reachPx;
    for (const mark of this.querySelectorAll<SVGElement>('.layer-marks :is(.disc, .half, .diamond, .ring)')) {
      const box = mark.getBoundingClientRect();
      if (box.width === 0) continue;
      const away = Math.hypot(x - box.x - box.width / 2, y - box.y - box.height / 2);
      if (away > distance) continue;
      distance = away;
      nearest = mark.closest<SVGElement>('[data-of]')?.dataset['of'];
    }
    return nearest;
  }
}

customElements.define('lineage-plate', LineagePlate);
