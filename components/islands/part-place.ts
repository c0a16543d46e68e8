import { readText, readTextNow } from './page-texts.ts';

/** What a part needs to move, by its id. The page carries none of it until the part is there. */
const codes: Readonly<Record<string, () => Promise<unknown>>> = {
  slice: () => import('./slice.ts'),
  relatives: () => import('./turn-nodes.ts'),
};

/** A part on its own page, and the style sheets of that page which this one lacks. */
interface Arrival {
  section: Element;
  sheets: string[];
}

/** The place of one part: shows it in short until the part itself comes. */
export class PartPlace {
  readonly #place: HTMLElement;
  readonly address: string;
  #coming: Promise<void> | undefined;

  constructor(place: HTMLElement) {
    this.#place = place;
    this.address = new URL(place.dataset['from']!, location.href).pathname;
  }

  get element(): HTMLElement {
    return this.#place;
  }

  get isOpen(): boolean {
    return this.#place.isConnected;
  }

  /** Brings the part, once. One that cannot be had leaves its place as it is, with the way to its own page. */
  bring(): Promise<void> {
    this.#coming ??= this.#fetch().catch(() => (this.#coming = undefined));
    return this.#coming;
  }

  /** Brings the part before this returns; one that cannot be had is printed in short, with its address. */
  bringNow(): void {
    if (!this.isOpen) return;
    try {
      const { section, sheets } = this.#read(readTextNow(this.address));
      this.#settle(section, sheets.map(readTextNow));
      void codes[section.id]?.();
    } catch {
      return;
    }
  }

  async #fetch(): Promise<void> {
    const { section, sheets } = this.#read(await readText(this.address));
    const [styles] = await Promise.all([
      Promise.all(sheets.map(readText)),
      codes[section.id]?.(),
      // Reading a part and laying it out are two tasks, so that neither holds up a scroll for long.
      new Promise((done) => setTimeout(done)),
    ]);
    if (this.isOpen) this.#settle(section, styles);
  }

  #read(text: string): Arrival {
    const page = new DOMParser().parseFromString(text, 'text/html');
    const section = page.getElementById(this.#place.id);
    if (!section) throw new Error(`no part "${this.#place.id}" at ${this.address}`);
    const sheetsOf = (of: Document) =>
      [...of.querySelectorAll('link[rel="stylesheet"]')].map((link) => link.getAttribute('href')!);
    const here = sheetsOf(document);
    return { section, sheets: sheetsOf(page).filter((sheet) => !here.includes(sheet)) };
  }

  #isInSightBelow(element: Element): boolean {
    const { top, bottom } = element.getBoundingClientRect();
    const isAfter = this.#place.compareDocumentPosition(element) === Node.DOCUMENT_POSITION_FOLLOWING;
    return isAfter && bottom > 0 && top < innerHeight;
  }

  #settle(section: Element, styles: readonly string[]): void {
    for (const style of styles) addSheet(style);
    const isAbove = this.#place.getBoundingClientRect().bottom <= 0;
    const before = this.#place.offsetHeight;
    const focused = document.activeElement;
    const held = focused && this.#isInSightBelow(focused) ? focused : undefined;
    const stood = held?.getBoundingClientRect().top ?? 0;
    const hadFocus = this.#place.contains(focused);
    const arrived = document.adoptNode(section) as HTMLElement;
    this.#place.replaceWith(arrived);
    if (hadFocus) {
      arrived.tabIndex = -1;
      arrived.focus({ preventScroll: true });
    }
    // What has the keyboard is not pushed out of sight by what comes above it.
    if (held) return scrollBy({ top: held.getBoundingClientRect().top - stood, behavior: 'instant' });
    // Where the browser does not hold what is read in its place, this does.
    if (isAbove && !CSS.supports('overflow-anchor', 'auto'))
      scrollBy({ top: arrived.offsetHeight - before, behavior: 'instant' });
  }
}

const added = new Set<string>();

/** Adds a style sheet from its text, which the content policy allows where a style element is refused. */
function addSheet(text: string): void {
  if (added.has(text)) return;
  added.add(text);
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(text);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
}
