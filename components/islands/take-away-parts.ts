/** Writes a text where it belongs; an empty one hides its place. */
export function showText(place: Element | null | undefined, text: string): void {
  if (!(place instanceof HTMLElement)) return;
  place.textContent = text;
  place.hidden = text === '';
}

/** Lets every card's button say what it does next: hide skulls, or put them back. */
export function showButtons(
  known: readonly string[],
  hidden: readonly string[],
  words: Readonly<Record<string, string>>,
): void {
  for (const button of document.querySelectorAll<HTMLElement>('[data-hide]')) {
    const taxon = button.dataset['hide']!;
    const isHidden = hidden.includes(taxon);
    button.hidden = !known.includes(taxon);
    button.textContent = words[isHidden ? 'takeAway.show' : 'takeAway.hide']!;
  }
}
