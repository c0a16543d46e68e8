import { everyPoint, linePoints } from '../slice/line-points.ts';
import { findShape, type CutBranch } from '../slice/slice-at.ts';
import type { SliceAnimal, SliceBlock } from '../slice/slice-block.ts';

/**
 * The place of one branch in the row of skulls. It writes only what has changed since it was last drawn; its row says when that
 * is.
 */
export class SlicePlace {
  readonly item: HTMLElement;
  readonly #block: SliceBlock;
  readonly #frame: HTMLElement;
  readonly #shape: SVGSVGElement;
  readonly #lines: readonly Element[];
  readonly #note: HTMLElement;
  #picture: HTMLImageElement | null;
  #cut: CutBranch | undefined;
  #isInSight = true;
  #order = NaN;
  #told = '';
  #drawnShare = NaN;
  #isRough = false;

  /** Takes an element of the page, with the skull of the branch that is drawn in it, if any. */
  constructor(block: SliceBlock, item: HTMLElement) {
    this.#block = block;
    this.item = item;
    this.#frame = item.querySelector<HTMLElement>('.slice-picture')!;
    this.#shape = item.querySelector('svg')!;
    this.#lines = [...this.#shape.children];
    this.#note = item.querySelector<HTMLElement>('.slice-note')!;
    this.#picture = item.querySelector('img');
  }

  get isInSight(): boolean {
    return this.#isInSight;
  }

  /** Stands at a place of the row with a cut of its branch to draw; nothing is moved in the document for it. */
  stand(order: number, cut: CutBranch): void {
    this.#cut = cut;
    if (order === this.#order) return;
    this.#order = order;
    this.item.style.order = String(order);
  }

  /** Learns whether it can be seen, and catches up with the line when it comes into sight. */
  see(isInSight: boolean): void {
    this.#isInSight = isInSight;
    if (isInSight) this.draw(true);
  }

  /** Draws its branch as the line cuts it, with few points or with all. */
  draw(isRough: boolean): void {
    const cut = this.#cut;
    if (!cut) return;
    const animal = cut.hasBone ? cut.branch.animal : undefined;
    const isInked = animal?.picture !== undefined;
    const isDrawn = !isInked && this.#drawShape(cut, isRough);
    const told = animal ? 'bone' : isDrawn ? 'shape' : 'none';
    if (told !== this.#told) this.#tell(told, isDrawn, animal);
  }

  #tell(told: string, isDrawn: boolean, animal: SliceAnimal | undefined): void {
    this.#told = told;
    this.item.className = `slice-branch ${animal ? 'slice-inked' : 'slice-ruled'}`;
    if (animal?.picture !== undefined) this.#hang(animal.picture);
    this.#picture?.toggleAttribute('hidden', animal?.picture === undefined);
    if (isDrawn) this.#shape.removeAttribute('display');
    else this.#shape.setAttribute('display', 'none');
    const name = animal?.name ?? this.#cut!.branch.name;
    this.item.querySelector('.slice-name')!.replaceChildren(...name.map(nodeOfRun));
    const note = animal?.note ?? this.#block.words[isDrawn ? 'slice.inferred' : 'slice.noShape'] ?? '';
    if (this.#note.textContent !== note) this.#note.textContent = note;
  }

  /** Puts the picture of the bones into the frame when it is first shown. */
  #hang(address: string): void {
    if (this.#picture) return;
    const [, , width, height] = this.#block.box;
    this.#picture = new Image(Math.round(width / 10), Math.round(height / 10));
    this.#picture.alt = '';
    this.#picture.src = address;
    this.#frame.prepend(this.#picture);
  }

  /** Draws the shape of the branch, and says whether it has one. One that has ended stands still. */
  #drawShape(cut: CutBranch, isRough: boolean): boolean {
    const shape = findShape(this.#block, cut);
    if (!shape) return false;
    if (cut.share === this.#drawnShare && (isRough || !this.#isRough)) return true;
    [this.#drawnShare, this.#isRough] = [cut.share, isRough];
    this.#block.lines.forEach((line, index) =>
      this.#lines[index]!.setAttribute('points', linePoints(shape, isRough ? line.rough : everyPoint(line))),
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
