import type { CutBranch } from '../slice/slice-at.ts';
import type { SliceAnimal, SliceBlock } from '../slice/slice-block.ts';
import { SlicePlace } from './slice-place.ts';

/** The row of skulls that a line cuts: places that stay, each of which shows the branch that has come to stand there. */
export class SliceRow {
  readonly #block: SliceBlock;
  readonly #list: HTMLElement;
  readonly #form: HTMLTemplateElement;
  readonly #items: HTMLElement[];
  readonly #places: SlicePlace[];
  readonly #room: Float64Array;
  /** Pictures of bones by their address. */
  readonly #pictures: Map<string, HTMLImageElement>;
  readonly #stillness = matchMedia('(prefers-reduced-motion: reduce)');
  #shown: ReadonlySet<string>;

  /** Takes over the places that the page has drawn. */
  constructor(block: SliceBlock, list: HTMLElement, form: HTMLTemplateElement) {
    this.#block = block;
    this.#list = list;
    this.#form = form;
    this.#items = [...list.querySelectorAll<HTMLElement>(':scope > li')];
    this.#room = new Float64Array(Math.max(0, ...block.outlines.map((outline) => outline?.length ?? 0)));
    this.#places = this.#items.map((item) => new SlicePlace(block, item, this.#room));
    this.#shown = new Set(this.#places.map(({ branch }) => branch ?? ''));
    this.#pictures = new Map(
      [...list.querySelectorAll('img')].map((image) => [image.getAttribute('src') ?? '', image]),
    );
  }

  /** Shows these branches in this order; those that were not cut before come in softly. */
  show(cut: readonly CutBranch[]): void {
    while (this.#items.length < cut.length) this.#addPlace();
    cut.forEach((each, index) => this.#places[index]!.show(each, this.#pictureOf));
    this.#items.forEach((item, index) => {
      if (index >= cut.length) item.remove();
      else if (!item.isConnected) this.#list.append(item);
    });
    const come = this.#items.filter(
      (_, index) => index < cut.length && !this.#shown.has(cut[index]!.branch.id),
    );
    this.#shown = new Set(cut.map(({ branch }) => branch.id));
    if (!this.#stillness.matches) come.forEach(comeIn);
  }

  #addPlace(): void {
    const item = document.importNode(this.#form.content, true).querySelector<HTMLElement>('li')!;
    this.#items.push(item);
    this.#places.push(new SlicePlace(this.#block, item, this.#room));
  }

  /** The picture of an animal's bones, made when it is first shown. */
  #pictureOf = ({ picture }: SliceAnimal): HTMLImageElement | undefined => {
    if (picture === undefined) return undefined;
    const known = this.#pictures.get(picture);
    if (known) return known;
    const [, , width, height] = this.#block.box;
    const image = new Image(Math.round(width / 10), Math.round(height / 10));
    image.alt = '';
    image.src = picture;
    this.#pictures.set(picture, image);
    return image;
  };
}

function comeIn(item: HTMLElement): void {
  item.animate([{ opacity: 0.3 }, { opacity: 1 }], { duration: 250, easing: 'ease-out' });
}
