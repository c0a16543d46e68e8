/**
 * The pinned figure. Markup and style sheet show the opening state without it; this keeps the figure in step with the
 * story, and opens evidence cards in the story's place.
 */
class LineagePlate extends HTMLElement {
  #watcher: IntersectionObserver | undefined;
  #returnTo: HTMLElement | undefined;

  connectedCallback(): void {
    const root = document.documentElement;
    root.classList.add('scripted');
    this.#show(this.dataset['first'] ?? '', '', 'figure');
    this.#watcher = new IntersectionObserver((entries) => this.#follow(entries), {
      rootMargin: this.#readingBand(),
    });
    for (const step of document.querySelectorAll<HTMLElement>('.opening, .step')) this.#watcher.observe(step);
    document.addEventListener('click', this.#onClick);
    document.addEventListener('keydown', this.#onKey);
    addEventListener('popstate', this.#onAddress);
    this.#onAddress();
  }

  disconnectedCallback(): void {
    this.#watcher?.disconnect();
    removeEventListener('resize', this.#watchSteps);
    document.removeEventListener('click', this.#onClick);
    document.removeEventListener('keydown', this.#onKey);
    removeEventListener('popstate', this.#onAddress);
  }

  /** The band of the screen in which a step counts as read: under the figure where it stands above, else the middle. */
  #readingBand(): string {
    const above = getComputedStyle(this).getPropertyValue('--figure-above').trim() === '1';
    if (!above) return '-46% 0px -46% 0px';
    const figure = Math.min(this.getBoundingClientRect().height, innerHeight);
    const rest = innerHeight - figure;
    return `${-Math.round(figure + rest * 0.2)}px 0px ${-Math.round(rest * 0.6)}px 0px`;
  }

  #watchSteps = (): void => {
    this.#watcher?.disconnect();
    this.#watcher = new IntersectionObserver((entries) => this.#follow(entries), {
      rootMargin: this.#readingBand(),
    });
    for (const step of document.querySelectorAll<HTMLElement>('.opening, .step')) this.#watcher.observe(step);
  };

  #follow(entries: IntersectionObserverEntry[]): void {
    for (const { isIntersecting, target } of entries) {
      if (!isIntersecting) continue;
      const { focus = '', slice = '', show = 'figure' } = (target as HTMLElement).dataset;
      for (const step of document.querySelectorAll('.step'))
        step.classList.toggle('current', step === target);
      this.#show(focus, slice, show);
    }
  }

  /** Puts animals and a slice in view. The first animal brings its skull; the others are lit in the chart. */
  #show(focus: string, slice: string, show: string): void {
    const wanted = focus
      .replace(/^clade:/, '')
      .split(/[\s+]+/)
      .filter(Boolean);
    for (const part of this.querySelectorAll<HTMLElement>('[data-of]')) {
      const of = part.dataset['of']!;
      part.classList.toggle('in-focus', of === wanted[0] || of === slice);
      part.classList.toggle('near-focus', wanted.includes(of));
      if (part.classList.contains('caption')) part.hidden = of !== wanted[0];
    }
    this.dataset['show'] = show;
  }

  #onClick = (event: MouseEvent): void => {
    const target = event.target instanceof Element ? event.target : undefined;
    if (target?.closest('[data-close]')) {
      event.preventDefault();
      this.#closeCard();
      return;
    }
    const link = target?.closest<HTMLAnchorElement>('a[data-evidence]');
    if (!link || event.metaKey || event.ctrlKey) return;
    event.preventDefault();
    this.#returnTo = link;
    history.pushState(null, '', link.hash);
    this.#onAddress();
  };

  #onKey = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && document.querySelector('.card.open')) this.#closeCard();
  };

  /** Opens the card that the address names, and closes any other. */
  #onAddress = (): void => {
    const id = decodeURIComponent(location.hash.slice(1));
    const card = id.startsWith('evidence-') ? document.getElementById(id) : null;
    for (const open of document.querySelectorAll('.card.open')) open.classList.remove('open');
    document.documentElement.classList.toggle('card-open', card !== null);
    if (!card) return;
    card.classList.add('open');
    card.scrollTop = 0;
    this.#show(card.dataset['of'] ?? '', '', 'measurement');
    card.focus({ preventScroll: true });
  };

  #closeCard(): void {
    for (const open of document.querySelectorAll('.card.open')) open.classList.remove('open');
    document.documentElement.classList.remove('card-open');
    history.replaceState(null, '', location.pathname + location.search);
    this.#returnTo?.focus({ preventScroll: true });
    const current =
      document.querySelector<HTMLElement>('.step.current') ?? document.querySelector<HTMLElement>('.opening');
    if (current)
      this.#show(
        current.dataset['focus'] ?? '',
        current.dataset['slice'] ?? '',
        current.dataset['show'] ?? 'figure',
      );
  }
}

customElements.define('lineage-plate', LineagePlate);
