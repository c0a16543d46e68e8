import { forksOf, tipsOf, type Kin } from '../figures/bracket-tree/kin.ts';
import {
  moveRows,
  nearestFork,
  readDrawing,
  readKin,
  rowsInOrder,
  type LiveDrawing,
  type Rows,
} from '../figures/bracket-tree/live-drawing.ts';
import { rowsOf } from '../figures/bracket-tree/rows.ts';
import { turnFork } from '../figures/bracket-tree/turn.ts';

/** How far from a fork a touch may fall, and how long a turn takes. */
const reachPx = 22;
const turnMs = 450;

/**
 * The bracket tree that can be turned. The nested list is the tree: a turn changes the order of its entries, and the
 * drawings follow. A fork is turned by its button in the list, or by a click near it in the figure.
 */
class TurnNodes extends HTMLElement {
  #kin: Kin | undefined;
  #drawn: Rows = new Map();
  #rows: Rows = new Map();
  #drawings: LiveDrawing[] = [];
  #frame = 0;

  connectedCallback(): void {
    const first = this.querySelector<HTMLElement>('.kin > [data-kin]');
    if (!first) return;
    this.#kin = readKin(first);
    this.#rows = this.#drawn = rowsInOrder(this.#kin);
    this.#drawings = [...this.querySelectorAll<HTMLElement>('[data-row-height]')].map(readDrawing);
    for (const button of this.querySelectorAll<HTMLElement>('[data-turn]')) button.hidden = false;
    this.dataset['ready'] = '';
    this.addEventListener('click', this.#onClick);
    this.addEventListener('pointermove', this.#onMove);
    this.addEventListener('focusin', this.#onFocus);
  }

  disconnectedCallback(): void {
    cancelAnimationFrame(this.#frame);
    this.removeEventListener('click', this.#onClick);
    this.removeEventListener('pointermove', this.#onMove);
    this.removeEventListener('focusin', this.#onFocus);
  }

  #onClick = (event: MouseEvent): void => {
    const target = event.target instanceof Element ? event.target : undefined;
    const named = target?.closest<HTMLElement>('[data-turn]')?.dataset['turn'];
    const fork =
      named ??
      (target?.closest('svg') ? nearestFork(this, event.clientX, event.clientY, reachPx) : undefined);
    if (fork !== undefined) this.#turn(fork);
  };

  #onMove = (event: PointerEvent): void => {
    const over = event.target instanceof Element && event.target.closest('svg');
    this.#light(over ? nearestFork(this, event.clientX, event.clientY, reachPx) : undefined);
  };

  #onFocus = (event: FocusEvent): void => {
    const fork = event.target instanceof HTMLElement ? event.target.dataset['turn'] : undefined;
    this.#light(fork);
    if (fork !== undefined) this.#bringIntoView(fork);
  };

  #turn(fork: string): void {
    const turned = turnFork(this.#kin!, fork);
    this.#kin = turned;
    for (const child of forksOf(turned).find(({ id }) => id === fork)!.children) {
      const entry = this.#entry(child.id);
      entry.parentElement!.append(entry);
    }
    this.#move(rowsInOrder(turned));
    this.#say(fork);
  }

  #entry(id: string): HTMLElement {
    return this.querySelector<HTMLElement>(`[data-kin="${CSS.escape(id)}"]`)!;
  }

  /** Moves all rows to their new places, every line staying joined on the way; at once where motion is not wanted. */
  #move(wanted: Rows): void {
    cancelAnimationFrame(this.#frame);
    const before = this.#rows;
    const kin = this.#kin!;
    const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
    let start: number | undefined;
    const step = (now: number): void => {
      start ??= now;
      const share = still ? 1 : Math.min(1, (now - start) / turnMs);
      const eased = share * share * (3 - 2 * share);
      const between = (id: string) => before.get(id)! + (wanted.get(id)! - before.get(id)!) * eased;
      this.#rows = rowsOf(kin, between);
      for (const drawing of this.#drawings) moveRows(drawing, kin, this.#drawn, this.#rows);
      if (share < 1) this.#frame = requestAnimationFrame(step);
    };
    if (still) step(0);
    else this.#frame = requestAnimationFrame(step);
  }

  #light(fork: string | undefined): void {
    for (const { groups } of this.#drawings)
      for (const [id, group] of groups) group.classList.toggle('turning', id === fork);
  }

  /** Scrolls the figure, not the page, to a fork that its frame hides. */
  #bringIntoView(fork: string): void {
    const frame = this.querySelector<HTMLElement>('.bracket-scroll')!;
    const handle = this.#drawings
      .map(({ groups }) => groups.get(fork))
      .find((g) => g?.getBoundingClientRect().width);
    if (!handle || frame.scrollHeight <= frame.clientHeight) return;
    const [own, around] = [handle.getBoundingClientRect(), frame.getBoundingClientRect()];
    frame.scrollTop += own.top + own.height / 2 - around.top - around.height / 2;
  }

  #say(fork: string): void {
    const below = tipsOf(forksOf(this.#kin!).find(({ id }) => id === fork)!);
    const name = (id: string) => this.#entry(id).querySelector('.taxon')?.textContent.trim() ?? id;
    const status = this.querySelector('[role="status"]');
    if (!status) return;
    status.textContent = this.dataset['turned']!.replace('{first}', name(below[0]!)).replace(
      '{last}',
      name(below.at(-1)!),
    );
  }
}

customElements.define('turn-nodes', TurnNodes);
