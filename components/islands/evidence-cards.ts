import { withoutMarks } from '../messages/without-marks.ts';
import { fetchCard } from './fetch-card.ts';
import { wishFocus } from './focus-wish.ts';

/**
 * Opens an evidence card in the story's place. Each card has an address (`#evidence-…`), so that back, forward and a
 * copied link work; without script the cards stand open in their section. Where there are too many for one page, each is a page
 * of its own (`data-folder`): links lead there without script, and with it the card is fetched when it opens.
 */
class EvidenceCards extends HTMLElement {
  #returnTo: HTMLElement | undefined;
  /** Counts openings, so that a card that comes late does not open over another. */
  #turn = 0;
  /** Cards on their way: back and a link may ask for one twice. */
  readonly #coming = new Map<string, Promise<HTMLElement | null>>();

  connectedCallback(): void {
    document.addEventListener('click', this.#onClick);
    document.addEventListener('keydown', this.#onKey);
    addEventListener('popstate', this.#follow);
    addEventListener('hashchange', this.#follow);
    void this.#follow();
  }

  disconnectedCallback(): void {
    document.removeEventListener('click', this.#onClick);
    document.removeEventListener('keydown', this.#onKey);
    removeEventListener('popstate', this.#follow);
    removeEventListener('hashchange', this.#follow);
  }

  #onClick = (event: MouseEvent): void => {
    const target = event.target instanceof Element ? event.target : undefined;
    const copy = target?.closest<HTMLElement>('[data-copy]');
    if (copy) void this.#copy(copy);
    if (target?.closest('[data-close]')) {
      event.preventDefault();
      this.#close();
    }
    const link = target?.closest<HTMLAnchorElement>('a[data-evidence]');
    if (!link || event.metaKey || event.ctrlKey || event.shiftKey) return;
    event.preventDefault();
    this.#returnTo = link;
    history.pushState(null, '', link.hash);
    void this.#follow();
  };

  #onKey = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && this.querySelector('.card.open')) this.#close();
  };

  /** Opens the card that the address names, and closes any other. */
  #follow = async (): Promise<void> => {
    const turn = ++this.#turn;
    const id = decodeURIComponent(location.hash.slice(1));
    const card = id.startsWith('evidence-') ? await this.#find(id) : null;
    if (turn !== this.#turn) return;
    const wasOpen = this.querySelector('.card.open');
    if (card !== wasOpen) this.#shut(wasOpen);
    if (!card) {
      if (wasOpen) wishFocus(undefined);
      return;
    }
    for (const button of card.querySelectorAll<HTMLElement>('[data-copy]')) button.hidden = false;
    card.classList.add('open');
    card.scrollTop = 0;
    wishFocus(card.dataset['of']);
    this.#pinFigure();
    card.focus({ preventScroll: true });
  };

  /** Puts a card back among the others; one that was fetched has no place there, and goes. */
  #shut(card: Element | null): void {
    card?.classList.remove('open');
    if (this.dataset['folder']) card?.remove();
  }

  /** The card of an id: on the page, or fetched from a page of its own. A card that cannot be fetched is gone to instead. */
  async #find(id: string): Promise<HTMLElement | null> {
    const { folder, trait } = this.dataset;
    const present = document.getElementById(id);
    const start = `evidence-${trait}-`;
    if (present || !folder || !id.startsWith(start)) return present;
    const address = `${folder}${encodeURIComponent(id.slice(start.length))}/`;
    const coming = this.#coming.get(id) ?? fetchCard(address, id);
    this.#coming.set(id, coming);
    const card = await coming;
    this.#coming.delete(id);
    if (!card) location.assign(address);
    else if (!card.isConnected) this.append(card);
    return card;
  }

  /** Where the figure stands above the story, brings it to the top, so that skull and ruler stay in view over the card. */
  #pinFigure(): void {
    const figure = document.querySelector('.figure');
    if (!figure || getComputedStyle(figure).getPropertyValue('--figure-above').trim() !== '1') return;
    const { top } = figure.getBoundingClientRect();
    if (top !== 0) scrollBy({ top, behavior: 'instant' });
  }

  #close(): void {
    history.pushState(null, '', location.pathname + location.search);
    void this.#follow();
    this.#returnTo?.focus({ preventScroll: true });
  }

  /** Copies the citation of the button's card; where a browser forbids that, selects it to be copied by hand. */
  async #copy(button: HTMLElement): Promise<void> {
    const card = button.closest('.card')!;
    const citation = card.querySelector('[data-citation]')!;
    try {
      await navigator.clipboard.writeText(withoutMarks(citation.textContent).trim());
      card.querySelector('[role="status"]')!.textContent = button.dataset['copy']!;
      button.textContent = button.dataset['copy']!;
    } catch {
      getSelection()?.selectAllChildren(citation);
    }
  }
}

customElements.define('evidence-cards', EvidenceCards);
