import { wishFocus } from './focus-wish.ts';

/**
 * Opens an evidence card in the story's place. Each card has an address (`#evidence-…`), so that back, forward and a
 * copied link work; without script the cards stand open in their section.
 */
class EvidenceCards extends HTMLElement {
  #returnTo: HTMLElement | undefined;

  connectedCallback(): void {
    document.addEventListener('click', this.#onClick);
    document.addEventListener('keydown', this.#onKey);
    addEventListener('popstate', this.#follow);
    addEventListener('hashchange', this.#follow);
    this.#follow();
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
    this.#follow();
  };

  #onKey = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && this.querySelector('.card.open')) this.#close();
  };

  /** Opens the card that the address names, and closes any other. */
  #follow = (): void => {
    const id = decodeURIComponent(location.hash.slice(1));
    const card = id.startsWith('evidence-') ? document.getElementById(id) : null;
    const wasOpen = this.querySelector('.card.open');
    if (card !== wasOpen) wasOpen?.classList.remove('open');
    if (!card) {
      if (wasOpen) wishFocus(undefined);
      return;
    }
    card.classList.add('open');
    card.scrollTop = 0;
    wishFocus(card.dataset['of']);
    this.#pinFigure();
    card.focus({ preventScroll: true });
  };

  /** Where the figure stands above the story, brings it to the top, so that skull and ruler stay in view over the card. */
  #pinFigure(): void {
    const figure = document.querySelector('.figure');
    if (!figure || getComputedStyle(figure).getPropertyValue('--figure-above').trim() !== '1') return;
    const { top } = figure.getBoundingClientRect();
    if (top !== 0) scrollBy({ top, behavior: 'instant' });
  }

  #close(): void {
    history.pushState(null, '', location.pathname + location.search);
    this.#follow();
    this.#returnTo?.focus({ preventScroll: true });
  }

  async #copy(button: HTMLElement): Promise<void> {
    const said = button.dataset['copied'];
    await navigator.clipboard.writeText(button.dataset['copy']!);
    if (said) button.textContent = said;
  }
}

customElements.define('evidence-cards', EvidenceCards);
