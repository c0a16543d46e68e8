import { namesHidden } from '../take-away/address.ts';
import { onFocusWish } from './focus-wish.ts';

/** How far below the screen the section may be when its code is asked for. */
const ahead = '1200px';

/** Shows what works with script or what stands without. The first is done at once, so that nothing moves when the code comes. */
function show(section: Element, isLive: boolean): void {
  for (const part of section.querySelectorAll<HTMLElement>('.take-away-live')) part.hidden = !isLive;
  for (const part of section.querySelectorAll<HTMLElement>('.take-away-unscripted')) part.hidden = isLive;
  document.querySelector('.left-out-table')?.toggleAttribute('open', !isLive);
}

/**
 * Fetches the recomputation when it is wanted: when its section comes near, when a card opens (it has a button for its own
 * skull), when an animal is ticked, or at once where the address names hidden animals. A page that is only read does not carry it.
 */
function bringTakeAway(): void {
  const section = document.querySelector('take-away');
  if (!section) return;
  show(section, true);
  const near = new IntersectionObserver(([entry]) => entry?.isIntersecting && bring(), { rootMargin: ahead });
  const stop = onFocusWish((taxon) => taxon !== undefined && bring());
  const bring = (): void => {
    near.disconnect();
    stop();
    import('./take-away.ts').catch(() => show(section, false));
  };
  near.observe(section);
  section.addEventListener('change', ({ target }) => {
    // A box that the browser ticked by itself, because it was so when the page was left, is none that the visitor ticked.
    if (target instanceof HTMLInputElement) target.toggleAttribute('data-ticked', target.checked);
    bring();
  });
  if (namesHidden(location.search)) bring();
}

bringTakeAway();
