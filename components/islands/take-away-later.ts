import { namesHidden } from '../take-away/address.ts';
import { onFocusWish } from './focus-wish.ts';

/** How far below the screen the section may be when its code is asked for. */
const ahead = '1200px';

/**
 * Fetches the recomputation when it is wanted: when its section comes near, when a card opens (it has a button for its own
 * skull), or at once where the address names hidden animals. A page that is only read does not carry it.
 */
function bringTakeAway(): void {
  const section = document.querySelector('take-away');
  if (!section) return;
  const near = new IntersectionObserver(([entry]) => entry?.isIntersecting && bring(), { rootMargin: ahead });
  const stop = onFocusWish((taxon) => taxon !== undefined && bring());
  const bring = (): void => {
    near.disconnect();
    stop();
    void import('./take-away.ts');
  };
  near.observe(section);
  if (namesHidden(location.search)) bring();
}

bringTakeAway();
