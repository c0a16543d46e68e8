import { acrossAt, heightOfAge } from '../slice/chart-places.ts';
import type { CutBranch } from '../slice/slice-at.ts';
import type { SliceBlock } from '../slice/slice-block.ts';

/** The line on the chart with a mark on every branch that it cuts; marks go with the line, and are kept. */
export class SliceLine {
  readonly #block: SliceBlock;
  readonly #handle: SVGGElement;
  readonly #indexOf: ReadonlyMap<string, number>;
  readonly #circles: SVGCircleElement[] = [];

  constructor(block: SliceBlock, handle: SVGGElement) {
    this.#block = block;
    this.#handle = handle;
    this.#indexOf = new Map(block.branches.map(({ id }, index) => [id, index]));
  }

  /** Stands at an age, and says so to those who cannot see it. */
  show(ageMa: number, cut: readonly CutBranch[], said: string): void {
    const { chart } = this.#block;
    const y = heightOfAge(chart, ageMa);
    put(this.#handle, 'transform', `translate(0 ${y.toFixed(1)})`);
    put(this.#handle, 'aria-valuenow', String(ageMa));
    put(this.#handle, 'aria-valuetext', said);
    cut.forEach(({ branch, hasBone }, index) => {
      const circle = this.#circleAt(index);
      put(circle, 'class', hasBone ? 'slice-cut slice-cut-bone' : 'slice-cut');
      put(circle, 'cx', acrossAt(chart.lines[this.#indexOf.get(branch.id)!]!, y).toFixed(1));
    });
    for (let index = cut.length; index < this.#circles.length; index++)
      put(this.#circles[index]!, 'class', 'slice-cut-none');
  }

  #circleAt(index: number): SVGCircleElement {
    const known = this.#circles[index];
    if (known) return known;
    const circle = document.createElementNS('http://www.w3.org/2000/svg', 'circle');
    circle.setAttribute('r', '4.6');
    this.#handle.append(circle);
    this.#circles.push(circle);
    return circle;
  }
}

function put(element: Element, name: string, value: string): void {
  if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}
