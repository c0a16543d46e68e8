import { linePoints } from '../slice/line-points.ts';
import { findOutline, type CutBranch } from '../slice/slice-at.ts';
import type { SliceAnimal, SliceBlock } from '../slice/slice-block.ts';

/**
 * One place in the row of skulls. It shows whatever branch stands there and writes only what has changed; its elements stay
 * where they are, because a browser lays out anew what is moved.
 */
export class SlicePlace {
  readonly #block: SliceBlock;
  /** Where the outline of one branch after another is worked out, for all places of a row. */
  readonly #room: Float64Array;
  readonly #item: HTMLElement;
  readonly #frame: HTMLElement;
  readonly #shape: SVGSVGElement;
  readonly #lines: readonly Element[];
  readonly #name: HTMLElement;
  readonly #note: HTMLElement;
  #told = '';
  #drawn = '';

  constructor(block: SliceBlock, item: HTMLElement, room: Float64Array) {
    this.#block = block;
    this.#room = room;
    this.#item = item;
    this.#frame = item.querySelector<HTMLElement>('.slice-picture')!;
    this.#shape = item.querySelector('svg')!;
    this.#lines = [...this.#shape.children];
    this.#name = item.querySelector<HTMLElement>('.slice-name')!;
    this.#note = item.querySelector<HTMLElement>('.slice-note')!;
  }

  get branch(): string | undefined {
    return this.#item.dataset['branch'];
  }

  /** Shows a cut branch, with the picture of its animal's bones where the line cuts them and there is one. */
  show(cut: CutBranch, pictureOf: (animal: SliceAnimal) => HTMLImageElement | undefined): void {
    const animal = cut.hasBone ? cut.branch.animal : undefined;
    const picture = animal && pictureOf(animal);
    const isDrawn = !picture && this.#draw(cut);
    const told = `${cut.branch.id} ${animal ? 'bone' : isDrawn ? 'shape' : 'none'}`;
    if (told === this.#told) return;
    this.#told = told;
    this.#item.dataset['branch'] = cut.branch.id;
    this.#item.className = `slice-branch ${animal ? 'slice-inked' : 'slice-ruled'}`;
    this.#hang(picture);
    if (isDrawn) this.#shape.removeAttribute('display');
    else this.#shape.setAttribute('display', 'none');
    this.#name.replaceChildren(...(animal?.name ?? cut.branch.name).map(nodeOfRun));
    const note = animal?.note ?? this.#block.words[isDrawn ? 'slice.inferred' : 'slice.noShape'] ?? '';
    if (this.#note.textContent !== note) this.#note.textContent = note;
  }

  /** Puts a picture into the frame, and takes out one of before. */
  #hang(picture: HTMLImageElement | undefined): void {
    for (const before of this.#frame.querySelectorAll('img')) if (before !== picture) before.remove();
    if (picture && picture.parentNode !== this.#frame) this.#frame.prepend(picture);
  }

  /** Draws the shape of a branch, and says whether it has one. One that has ended stands still. */
  #draw(cut: CutBranch): boolean {
    const drawn = `${cut.branch.id} ${cut.share}`;
    if (drawn === this.#drawn) return true;
    const outline = findOutline(this.#block, cut, this.#room);
    if (!outline) return false;
    this.#drawn = drawn;
    this.#block.lines.forEach((line, index) =>
      this.#lines[index]!.setAttribute('points', linePoints(outline, line)),
    );
    return true;
  }
}

function nodeOfRun({ text, voice }: { text: string; voice: string }): Node {
  if (voice !== 'name') return document.createTextNode(text);
  const name = document.createElement('i');
  name.lang = 'la';
  name.translate = false;
  name.textContent = text;
  return name;
}
