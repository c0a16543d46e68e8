import { ageIn } from '../slice/address.ts';
import { PartPlace } from './part-place.ts';
import { stillness } from './stillness.ts';

/** How far below the screen a part may be when it is brought at once. */
const ahead = '1200px';

const places = [...document.querySelectorAll<HTMLElement>('.later-part')].map((each) => new PartPlace(each));

/** Brings all parts one after the other while the visitor reads; not where data are to be saved. */
async function bringInTurn(): Promise<void> {
  const { connection } = navigator as { connection?: { saveData?: boolean } };
  if (connection?.saveData) return;
  for (const place of places) {
    await stillness();
    await place.bring();
  }
}

/** Goes to a place in a part, when the part is there. */
async function go(place: PartPlace, hash: string): Promise<void> {
  await place.bring();
  if (place.isOpen) location.assign(place.address + hash);
  else location.hash = hash || `#${place.element.id}`;
}

function onClick(event: MouseEvent): void {
  const link = event.target instanceof Element ? event.target.closest<HTMLAnchorElement>('a[href]') : null;
  const place = places.find(({ address }) => address === link?.pathname);
  if (!link || !place || event.metaKey || event.ctrlKey || event.shiftKey || event.button !== 0) return;
  event.preventDefault();
  void go(place, link.hash);
}

/** An address that names a place which is not there yet waits for all parts. */
async function followAddress(): Promise<void> {
  if (ageIn(location.search) !== undefined)
    void places.find(({ element }) => element.id === 'slice')?.bring();
  const named = decodeURIComponent(location.hash.slice(1));
  if (named === '' || document.getElementById(named)) return;
  await Promise.all(places.map((place) => place.bring()));
  document.getElementById(named)?.scrollIntoView();
}

function begin(): void {
  const near = new IntersectionObserver(
    (entries) => {
      for (const { isIntersecting, target } of entries)
        if (isIntersecting) void places.find(({ element }) => element === target)?.bring();
    },
    { rootMargin: ahead },
  );
  for (const { element } of places) near.observe(element);
  addEventListener('beforeprint', () => {
    for (const place of places) place.bringNow();
  });
  document.addEventListener('click', onClick);
  addEventListener('popstate', () => void followAddress());
  void followAddress();
  if (document.readyState === 'complete') void bringInTurn();
  else addEventListener('load', () => void bringInTurn(), { once: true });
}

if (places.length > 0) begin();
