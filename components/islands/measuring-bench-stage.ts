import {
  bringOn,
  fitView,
  levelView,
  toPicture,
  toStage,
  zoomAbout,
  type Extent,
  type PictureView,
} from '../measuring/picture-view.ts';
import type { Place } from '../measuring/place.ts';
import { drawMarks, type StageMark } from './measuring-bench-marks.ts';

/** How far a press may wander and still be a tap, stage px: a finger wanders more than a mouse. */
const tapReach = { mouse: 4, other: 10 };

/** What stands on the stage, in px of the picture. */
export interface StageContent {
  readonly marks: readonly StageMark[];
  readonly lines: readonly (readonly [Place, Place])[];
  readonly cross: Place;
}

/** The picture under the hand: shows it, moves and enlarges it, and tells where it was tapped. */
export class BenchStage {
  readonly #element: HTMLElement;
  readonly #image: HTMLImageElement;
  readonly #marks: SVGSVGElement;
  readonly #onTap: (place: Place) => void;
  readonly #pressed = new Map<number, { start: Place; now: Place }>();
  #view: PictureView | undefined;
  #picture: Extent | undefined;
  #content: StageContent | undefined;
  #wandered = false;

  constructor(element: HTMLElement, onTap: (place: Place) => void) {
    this.#element = element;
    // Made here: without a source it has no place in a page.
    this.#image = document.createElement('img');
    Object.assign(this.#image, { alt: '', hidden: true, draggable: false });
    this.#image.dataset['picture'] = '';
    element.prepend(this.#image);
    this.#marks = element.querySelector('[data-marks]')!;
    this.#onTap = onTap;
    element.addEventListener('pointerdown', this.#onDown);
    element.addEventListener('pointermove', this.#onMove);
    element.addEventListener('pointerup', this.#onUp);
    element.addEventListener('pointercancel', this.#onCancel);
    element.addEventListener('wheel', this.#onWheel, { passive: false });
    new ResizeObserver(() => this.#draw()).observe(element);
  }

  /** Shows a picture by its address, whole; or an empty stage. */
  show(address: string | undefined, picture: Extent | undefined): void {
    if (this.#image.src !== '') URL.revokeObjectURL(this.#image.src);
    this.#picture = picture;
    this.#element.classList.toggle('has-picture', picture !== undefined);
    this.#image.hidden = !picture;
    if (address === undefined || !picture) {
      this.#image.removeAttribute('src');
      this.#marks.innerHTML = '';
      return;
    }
    this.#image.src = address;
    this.#image.width = picture.width;
    this.#image.height = picture.height;
    this.whole();
  }

  /** Puts marks, lines and the cross on the picture. */
  mark(content: StageContent): void {
    this.#content = content;
    this.#draw();
  }

  whole(): void {
    if (!this.#picture) return;
    this.#view = fitView(this.#picture, this.#extent(), this.#view?.turnRad ?? 0);
    this.#draw();
  }

  /** Turns the picture so that a line lies level, or back to how it was taken. */
  level(line: readonly [Place, Place] | undefined): void {
    if (!this.#view) return;
    this.#view = levelView(this.#view, line, this.#extent());
    this.#draw();
  }

  /** Enlarges about the cross. */
  enlarge(factor: number, about: Place): void {
    if (!this.#view) return;
    this.#view = zoomAbout(this.#view, toStage(this.#view, about), factor, this.#leastZoom());
    this.#draw();
  }

  /** Moves the picture no more than needed for a place to be seen. */
  reveal(place: Place): void {
    if (!this.#view) return;
    this.#view = bringOn(this.#view, place, this.#extent());
    this.#draw();
  }

  /** The place of the picture from which a step on the stage, level or upright, leads to another. */
  stepFrom(place: Place, [dx, dy]: Place): Place {
    const turnRad = this.#view?.turnRad ?? 0;
    const [x, y] = toPicture({ zoom: 1, turnRad, moved: [0, 0] }, [dx, dy]);
    return [place[0] + x, place[1] + y];
  }

  #extent(): Extent {
    return { width: this.#element.clientWidth, height: this.#element.clientHeight };
  }

  #leastZoom(): number {
    return fitView(this.#picture!, this.#extent(), this.#view!.turnRad).zoom / 2;
  }

  #draw(): void {
    if (!this.#view || !this.#picture) return;
    const view = this.#view;
    const [cos, sin] = [Math.cos(view.turnRad) * view.zoom, Math.sin(view.turnRad) * view.zoom];
    this.#image.style.transform = `matrix(${cos}, ${sin}, ${-sin}, ${cos}, ${view.moved[0]}, ${view.moved[1]})`;
    this.#image.classList.toggle('is-enlarged', view.zoom >= 3);
    if (!this.#content) return;
    const { marks, lines, cross } = this.#content;
    this.#marks.innerHTML = drawMarks(
      marks.map((mark) => ({ ...mark, at: toStage(view, mark.at) })),
      lines.map(([from, to]) => [toStage(view, from), toStage(view, to)] as const),
      toStage(view, cross),
    );
  }

  #pointOf(event: MouseEvent): Place {
    const box = this.#element.getBoundingClientRect();
    return [
      event.clientX - box.left - this.#element.clientLeft,
      event.clientY - box.top - this.#element.clientTop,
    ];
  }

  #onDown = (event: PointerEvent): void => {
    if (!this.#picture || (event.pointerType === 'mouse' && event.button !== 0)) return;
    const start = this.#pointOf(event);
    if (this.#pressed.size === 0) this.#wandered = false;
    this.#pressed.set(event.pointerId, { start, now: start });
    if (this.#pressed.size > 1) this.#wandered = true;
    this.#element.setPointerCapture(event.pointerId);
  };

  #onMove = (event: PointerEvent): void => {
    const own = this.#pressed.get(event.pointerId);
    if (!own || !this.#view) return;
    const now = this.#pointOf(event);
    const reach = event.pointerType === 'mouse' ? tapReach.mouse : tapReach.other;
    if (Math.hypot(now[0] - own.start[0], now[1] - own.start[1]) > reach) this.#wandered = true;
    if (this.#wandered) this.#follow(event.pointerId, own.now, now);
    this.#pressed.set(event.pointerId, { start: own.start, now });
  };

  /** One finger moves the picture, two also enlarge it about the one that rests. */
  #follow(finger: number, before: Place, now: Place): void {
    const view = this.#view!;
    const other = [...this.#pressed].find(([id]) => id !== finger)?.[1].now;
    if (!other) {
      this.#view = {
        ...view,
        moved: [view.moved[0] + now[0] - before[0], view.moved[1] + now[1] - before[1]],
      };
    } else {
      const apart = (place: Place) => Math.max(1, Math.hypot(place[0] - other[0], place[1] - other[1]));
      this.#view = zoomAbout(view, other, apart(now) / apart(before), this.#leastZoom());
    }
    this.#draw();
  }

  #onUp = (event: PointerEvent): void => {
    const own = this.#pressed.get(event.pointerId);
    this.#pressed.delete(event.pointerId);
    if (!own || this.#wandered || !this.#view || !this.#picture) return;
    const [x, y] = toPicture(this.#view, this.#pointOf(event));
    const { width, height } = this.#picture;
    if (x >= 0 && y >= 0 && x <= width && y <= height) this.#onTap([x, y]);
  };

  #onCancel = (event: PointerEvent): void => {
    this.#pressed.delete(event.pointerId);
    this.#wandered = true;
  };

  /** A plain wheel scrolls the page; with Ctrl, which is also what two fingers on a touchpad send, it enlarges. */
  #onWheel = (event: WheelEvent): void => {
    if (!event.ctrlKey || !this.#view || !this.#picture) return;
    event.preventDefault();
    this.#view = zoomAbout(
      this.#view,
      this.#pointOf(event),
      Math.exp(-event.deltaY / 200),
      this.#leastZoom(),
    );
    this.#draw();
  };
}
