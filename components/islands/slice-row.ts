import { outlinePath } from '../slice/outline-path.ts';
import { findOutline, type CutBranch } from '../slice/slice-at.ts';
import type { SliceBlock } from '../slice/slice-block.ts';

/** One branch in the row, made once and kept while the line moves. */
interface BranchForm {
  readonly item: HTMLElement;
  readonly frame: HTMLElement;
  picture: HTMLImageElement | undefined;
  readonly shape: SVGSVGElement;
  readonly paths: readonly SVGPathElement[];
  readonly name: HTMLElement;
  readonly note: HTMLElement;
  /** What its words say now: of bone, of a shape, or of neither. */
  told: 'bone' | 'shape' | 'none' | undefined;
}

/** The row of skulls that a line cuts: kept forms, of which only what has changed is written. */
export class SliceRow {
  readonly #block: SliceBlock;
  readonly #list: HTMLElement;
  readonly #form: HTMLTemplateElement;
  readonly #forms = new Map<string, BranchForm>();
  #order = '';

  constructor(block: SliceBlock, list: HTMLElement, form: HTMLTemplateElement) {
    this.#block = block;
    this.#list = list;
    this.#form = form;
  }

  /** Shows these branches in this order. */
  show(cut: readonly CutBranch[]): void {
    const forms = cut.map((each) => this.#formOf(each));
    cut.forEach((each, index) => this.#fill(forms[index]!, each));
    const order = cut.map(({ branch }) => branch.id).join();
    if (order === this.#order) return;
    this.#order = order;
    this.#arrange(forms.map(({ item }) => item));
  }

  /** Takes out what is no longer cut and moves what has changed places; what stays is left alone, so that it does not come in anew. */
  #arrange(items: readonly HTMLElement[]): void {
    const kept = new Set<Element>(items);
    for (const item of [...this.#list.children]) if (!kept.has(item)) item.remove();
    items.forEach((item, index) => {
      const there = this.#list.children[index] ?? null;
      if (there !== item) this.#list.insertBefore(item, there);
    });
  }

  #formOf({ branch }: CutBranch): BranchForm {
    const known = this.#forms.get(branch.id);
    if (known) return known;
    const item = document.importNode(this.#form.content, true).querySelector<HTMLElement>('li')!;
    item.dataset['branch'] = branch.id;
    const shape = item.querySelector('svg')!;
    const form: BranchForm = {
      item,
      frame: item.querySelector<HTMLElement>('.slice-picture')!,
      picture: undefined,
      shape,
      paths: [...shape.querySelectorAll('path')],
      name: item.querySelector<HTMLElement>('.slice-name')!,
      note: item.querySelector<HTMLElement>('.slice-note')!,
      told: undefined,
    };
    this.#forms.set(branch.id, form);
    return form;
  }

  #fill(form: BranchForm, cut: CutBranch): void {
    const animal = cut.hasBone ? cut.branch.animal : undefined;
    const outline = animal?.picture ? undefined : findOutline(this.#block, cut);
    if (outline)
      this.#block.paths.forEach((path, index) =>
        form.paths[index]!.setAttribute('d', outlinePath(outline, path)),
      );
    const told = animal ? 'bone' : outline ? 'shape' : 'none';
    if (told === form.told) return;
    form.told = told;
    form.item.className = `slice-branch ${animal ? 'slice-inked' : 'slice-ruled'}`;
    if (animal?.picture) this.#picture(form, animal.picture).hidden = false;
    else if (form.picture) form.picture.hidden = true;
    if (outline) form.shape.removeAttribute('display');
    else form.shape.setAttribute('display', 'none');
    form.name.replaceChildren(...(animal?.name ?? cut.branch.name).map(nodeOfRun));
    form.note.textContent =
      animal?.note ?? this.#block.words[outline ? 'slice.inferred' : 'slice.noShape'] ?? '';
  }

  /** The picture of an animal's bones, made when it is first shown. */
  #picture(form: BranchForm, address: string): HTMLImageElement {
    if (form.picture) return form.picture;
    const [, , width, height] = this.#block.box;
    form.picture = new Image(Math.round(width / 10), Math.round(height / 10));
    form.picture.alt = '';
    form.picture.src = address;
    form.frame.prepend(form.picture);
    return form.picture;
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
