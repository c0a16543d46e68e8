import { ageIn, searchWithAge } from '../slice/address.ts';
import { ageAtHeight } from '../slice/chart-places.ts';
import { ageAtNextFork, allowedAge, cutBranches, oldestAge } from '../slice/slice-at.ts';
import type { SliceBlock } from '../slice/slice-block.ts';
import { ageWords, boneWords } from '../slice/slice-words.ts';
import type { Voice } from '../messages/say.ts';
import { liveVoice } from '../take-away/live-voice.ts';
import { SliceLine } from './slice-line.ts';
import { SliceRow } from './slice-row.ts';

/** Steps of the keys in million years. */
const keySteps: Readonly<Record<string, number>> = {
  ArrowUp: -0.5,
  ArrowRight: -0.5,
  ArrowDown: 0.5,
  ArrowLeft: 0.5,
  PageUp: -5,
  PageDown: 5,
};

/** A line that has not moved for so long is at rest, in milliseconds. */
const restMs = 150;
/** Longest that a slow machine is waited for. */
const longestRestMs = 900;

/** What the line needs once it moves. */
interface Moving {
  readonly block: SliceBlock;
  readonly voice: Voice;
  readonly row: SliceRow;
  readonly line: SliceLine;
}

/**
 * The line across the tree. The page shows the ages of the story without it; what other ages need is fetched when the line
 * is first moved. The age stands in the address, so that a link carries it.
 */
class TreeSlice extends HTMLElement {
  #moving: Promise<Moving | undefined> | undefined;
  #ready: Moving | undefined;
  #ageMa = 0;
  #wishedMa: number | undefined;
  #dragging = false;
  #steppedAt = -Infinity;
  #resting: ReturnType<typeof setTimeout> | undefined;

  connectedCallback(): void {
    this.#ageMa = Number(this.dataset['age']);
    const handle = this.#handle();
    handle.removeAttribute('display');
    this.querySelector<HTMLElement>('.slice-controls')!.hidden = false;
    for (const rest of this.querySelectorAll('.slice-row:not(:first-child), .slice-cuts'))
      rest.setAttribute('hidden', '');
    this.#layer().addEventListener('pointerdown', this.#onDown);
    this.#layer().addEventListener('pointermove', this.#onMove);
    this.#layer().addEventListener('pointerup', this.#onUp);
    this.#layer().addEventListener('pointercancel', this.#onUp);
    handle.addEventListener('keydown', this.#onKey);
    // Whoever comes to the line is about to move it.
    handle.addEventListener('focus', this.#fetch);
    this.addEventListener('click', this.#onClick);
    addEventListener('popstate', this.#follow);
    this.#standStill();
    this.#follow();
  }

  disconnectedCallback(): void {
    clearTimeout(this.#resting);
    removeEventListener('popstate', this.#follow);
    this.removeEventListener('click', this.#onClick);
  }

  #layer = (): SVGSVGElement => this.querySelector<SVGSVGElement>('.slice-line-layer')!;
  #handle = (): SVGGElement => this.querySelector<SVGGElement>('.slice-handle')!;

  /** The handle stands on the line that the page has drawn, until it is moved. */
  #standStill(): void {
    const drawn = this.querySelector('.slice-cuts');
    const height = /^M[^ ]+ ([^H]+)H/.exec(drawn?.querySelector('path')?.getAttribute('d') ?? '')?.[1];
    drawn?.removeAttribute('hidden');
    const handle = this.#handle();
    handle.setAttribute('transform', `translate(0 ${height ?? 0})`);
    handle.setAttribute('aria-valuenow', String(this.#ageMa));
    handle.setAttribute('aria-valuetext', this.querySelector('.slice-count')?.textContent ?? '');
  }

  #follow = (): void => {
    const age = ageIn(location.search);
    if (age !== undefined) void this.#go(age);
  };

  #fetch = (): Promise<Moving | undefined> => {
    this.#moving ??= this.#load();
    return this.#moving;
  };

  async #load(): Promise<Moving | undefined> {
    const failed = this.querySelector<HTMLElement>('.slice-failed')!;
    try {
      const response = await fetch(this.dataset['block'] ?? '');
      const block = response.ok ? ((await response.json()) as SliceBlock) : undefined;
      if (block?.schema !== 'lineament.slice/2') throw new Error('no block of the slice');
      failed.hidden = true;
      return this.#begin(block);
    } catch {
      this.#moving = undefined;
      failed.hidden = false;
      return undefined;
    }
  }

  #begin(block: SliceBlock): Moving {
    for (const drawn of this.querySelectorAll('.slice-cuts')) drawn.setAttribute('hidden', '');
    const list = this.querySelector<HTMLElement>('.slice-branches')!;
    const form = this.querySelector<HTMLTemplateElement>('.slice-form')!;
    this.#ready = {
      block,
      voice: liveVoice(block.language, block.words),
      row: new SliceRow(block, list, form),
      line: new SliceLine(block, this.#handle()),
    };
    this.#handle().setAttribute('aria-valuemax', String(oldestAge(block.branches)));
    return this.#ready;
  }

  /** Moves the line; a wish that came later while the shapes were on their way wins. */
  async #go(ageMa: number, isMoving = false): Promise<void> {
    this.#wishedMa = ageMa;
    const moving = this.#ready ?? (await this.#fetch());
    if (!moving || this.#wishedMa !== ageMa) return;
    this.#ageMa = allowedAge(moving.block.branches, ageMa);
    clearTimeout(this.#resting);
    this.#show(moving, isMoving);
    if (isMoving) this.#resting = setTimeout(() => this.#show(moving, false), this.#untilRest());
  }

  /** Milliseconds without a step that are a rest: where steps come slowly, more than passes between two of them. */
  #untilRest(): number {
    const now = performance.now();
    const between = now - this.#steppedAt;
    this.#steppedAt = now;
    if (between > longestRestMs) return restMs;
    return Math.min(longestRestMs, Math.max(restMs, between * 3));
  }

  /** Draws the line and what it cuts: roughly while it moves, all of it and the address when it rests. */
  #show({ block, voice, row, line }: Moving, isMoving: boolean): void {
    const cut = cutBranches(block, this.#ageMa);
    const said = ageWords(voice, this.#ageMa, cut.length);
    line.show(this.#ageMa, cut, said);
    row.show(cut, isMoving);
    write(this.querySelector('.slice-count')!, said);
    write(this.querySelector('.slice-split')!, boneWords(voice, cut));
    if (!isMoving) this.#keep();
  }

  /** Puts the age into the address, without a new entry of the history for every step. */
  #keep(): void {
    if (ageIn(location.search) === this.#ageMa) return;
    history.replaceState(
      history.state,
      '',
      location.pathname + searchWithAge(location.search, this.#ageMa) + location.hash,
    );
  }

  #ageUnder(event: PointerEvent): number | undefined {
    const box = this.#layer().getBoundingClientRect();
    const chart = this.#ready?.block.chart;
    return chart && ageAtHeight(chart, ((event.clientY - box.top) / box.height) * chart.height);
  }

  #onDown = async (event: PointerEvent): Promise<void> => {
    if (event.button !== 0) return;
    const onHandle = event.target instanceof Element && event.target.closest('.slice-handle') !== null;
    // A finger elsewhere on the chart scrolls the page; a tap there is a click.
    if (event.pointerType === 'touch' && !onHandle) return;
    this.#dragging = true;
    this.#layer().setPointerCapture(event.pointerId);
    await this.#fetch();
    if (!onHandle) this.#moveTo(event);
  };

  #onMove = (event: PointerEvent): void => {
    if (this.#dragging) this.#moveTo(event);
  };

  #onUp = (): void => {
    this.#dragging = false;
  };

  #moveTo(event: PointerEvent): void {
    const age = this.#ageUnder(event);
    if (age !== undefined) void this.#go(age, true);
  }

  #onKey = (event: KeyboardEvent): void => {
    const step = keySteps[event.key];
    const age = event.key === 'Home' ? Infinity : event.key === 'End' ? 0 : this.#ageMa + (step ?? NaN);
    if (Number.isNaN(age) || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    // A key that is held down moves the line; one press is a step that rests at once.
    void this.#go(age, event.repeat);
  };

  #onClick = async (event: MouseEvent): Promise<void> => {
    const target = event.target instanceof Element ? event.target : undefined;
    const button = target?.closest<HTMLElement>('[data-fork], [data-go]');
    if (!button) return void (target?.closest('.slice-line-layer') && this.#tap(event));
    const moving = await this.#fetch();
    if (!moving) return;
    const { go, fork } = button.dataset;
    const toward = fork === 'older' ? 'older' : 'younger';
    await this.#go(go === undefined ? ageAtNextFork(moving.block.branches, this.#ageMa, toward) : Number(go));
    this.querySelector('[role="status"]')!.textContent = this.querySelector('.slice-count')!.textContent;
  };

  async #tap(event: MouseEvent): Promise<void> {
    if (await this.#fetch()) this.#moveTo(event as PointerEvent);
  }
}

/** Changes the text of an element in the node that holds it: to put a new one there would have the page's styles looked through. */
function write(element: Element, text: string): void {
  const node = element.firstChild;
  if (node instanceof Text) node.data = text;
  else element.textContent = text;
}

customElements.define('tree-slice', TreeSlice);
