const name = 'lineament:focus';

/** Asks the plate to show one animal; undefined asks for what the story shows. */
export function wishFocus(taxon: string | undefined): void {
  document.dispatchEvent(new CustomEvent(name, { detail: taxon }));
}

/** Hears such wishes until the returned function is called. */
export function onFocusWish(hear: (taxon: string | undefined) => void): () => void {
  const listener = (event: Event): void => hear((event as CustomEvent<string | null>).detail ?? undefined);
  document.addEventListener(name, listener);
  return () => document.removeEventListener(name, listener);
}
