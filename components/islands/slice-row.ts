import type { CutBranch } from '../slice/slice-at.ts';
import type { SliceBlock } from '../slice/slice-block.ts';
import { SlicePlace } from './slice-place.ts';

/** How far beyond the screen a skull still moves with the line. */
const beyond = '40px';
/** How many skulls one step of a moving line draws; with more in sight they take turns, so that no step is slower for them. */
const mostAStep = 8;

/**
 * The row of skulls that a line cuts, each branch with a place of its own. While the line moves, places change their order by
 * style alone, because a browser lays out anew what is moved in the document; that follows when the line rests.
 */
export class SliceRow {
  readonly #block: SliceBlock;
  readonly #list: HTMLElement;
  readonly #form: HTMLTemplateElement;
  /** Places by their branch, those that were cut before too. */
  readonly #places = new Map<string, SlicePlace>();
  readonly #stillness = matchMedia('(prefers-reduced-motion: reduce)');
  readonly #sight = new IntersectionObserver((entries) => this.#see(entries), { rootMargin: beyond });
  #shown: readonly SlicePlace[];
  /** Whose turn it is. */
  #turn = 0;

  /** Takes over the places that the page has drawn. */
  constructor(block: SliceBlock, list: HTMLElement, form: HTMLTemplateElement) {
    this.#block = block;
    this.#list = list;
    this.#form = form;
    const items = [...list.querySelectorAll<HTMLElement>(':scope > li')];
    this.#shown = items.map((item) => this.#keep(item.dataset['branch'] ?? '', item));
  }

  /** Shows these branches in this order; those that were not cut before come in softly. */
  show(cut: readonly CutBranch[], isMoving: boolean): void {
    const places = cut.map(({ branch }) => this.#places.get(branch.id) ?? this.#make(branch.id));
    places.forEach((place, index) => place.stand(index, cut[index]!));
    if (isMoving) this.#drawInTurn(places);
    else for (const place of places) place.draw(false);
    for (const place of this.#shown) if (!places.includes(place)) place.item.remove();
    const come = places.filter(({ item }) => !item.isConnected).map(({ item }) => item);
    if (come.length > 0) this.#list.append(...come);
    this.#shown = places;
    if (!isMoving) this.#arrange();
    if (!this.#stillness.matches) come.forEach(comeIn);
  }

  /** Draws those that come now, and some of the others that can be seen. */
  #drawInTurn(places: readonly SlicePlace[]): void {
    for (const place of places) if (!place.item.isConnected) place.draw(true);
    const inSight = places.filter(({ isInSight }) => isInSight);
    const count = Math.min(mostAStep, inSight.length);
    for (let step = 0; step < count; step++) inSight[(this.#turn + step) % inSight.length]!.draw(true);
    this.#turn = inSight.length > 0 ? (this.#turn + count) % inSight.length : 0;
  }

  /** Brings the document into the order that is seen, for those who read it there. */
  #arrange(): void {
    this.#shown.forEach(({ item }, index) => {
      const there = this.#list.children[index];
      if (there !== item) this.#list.insertBefore(item, there ?? null);
    });
  }

  #make(branch: string): SlicePlace {
    const item = document.importNode(this.#form.content, true).querySelector<HTMLElement>('li')!;
    item.dataset['branch'] = branch;
    return this.#keep(branch, item);
  }

  #keep(branch: string, item: HTMLElement): SlicePlace {
    const place = new SlicePlace(this.#block, item);
    this.#places.set(branch, place);
    this.#sight.observe(item);
    return place;
  }

  #see(entries: readonly IntersectionObserverEntry[]): void {
    for (const { target, isIntersecting } of entries)
      this.#places.get((target as HTMLElement).dataset['branch'] ?? '')?.see(isIntersecting);
  }
}

function comeIn(item: HTMLElement): void {
  item.animate([{ opacity: 0.3 }, { opacity: 1 }], { duration: 250, easing: 'ease-out' });
}
