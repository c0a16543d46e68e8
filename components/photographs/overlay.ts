import type { CompiledPicture } from '../../scripts/compile/contract.ts';
import { escapeText } from '../figures/scene/svg.ts';
import { labelPlaces, type LabelPlace } from './label-places.ts';

type Marks = NonNullable<CompiledPicture['marks']>;

/** What an overlay needs besides the marks themselves. */
export interface OverlayWords {
  /** Name of a landmark, for a pointer that rests on it. */
  name(landmark: string): string;
  /** Landmarks of the measured line, which stand out. */
  readonly measured: ReadonlySet<string>;
  /** What stands at the bar: its length. */
  bar(mm: number): string;
}

/** How an overlay is drawn: large with numbers, or small with dots alone. */
export type OverlaySize = 'numbered' | 'dots';

/** Shares of the picture's width: radius of a numbered point, and size of letters. */
const pointShare = 1 / 230;
const letterShares = { numbered: 1 / 62, dots: 1 / 26 };

/**
 * The points that were placed on a picture, the breaks, and the bar from which lengths were taken, as shapes in px of the
 * picture. Every shape has a light line under a dark one, so that it stands out on any picture.
 */
export function overlayMarkup(picture: CompiledPicture, size: OverlaySize, words: OverlayWords): string {
  const { marks, width = 0 } = picture;
  if (!marks) return '';
  const radius = width * pointShare;
  const letters = width * letterShares[size];
  const places = labelPlaces(
    marks.landmarks.map(({ at }) => at),
    { radius, letters },
  );
  return [
    ...marks.breaks.map(({ landmark, points }) => breakMarkup(landmark, points, words)),
    marks.scale ? barMarkup(marks.scale, { letters, width }, words) : '',
    ...(size === 'dots'
      ? dotsMarkup(marks.landmarks, words)
      : marks.landmarks.map((landmark, index) => {
          const label = labelMarkup(places[index]!, index + 1, letters);
          return pointMarkup(landmark, radius, label, words);
        })),
  ].join('');
}

/** All points as dots of two lines, light over dark, those of the measured line after the rest: a card has many and names none. */
function dotsMarkup(landmarks: Marks['landmarks'], { measured }: OverlayWords): string[] {
  const path = (chosen: Marks['landmarks']) =>
    chosen.map(({ at: [x, y] }) => `M${px(x)} ${px(y)}h0`).join('');
  const all = path(landmarks);
  const line = path(landmarks.filter(({ id }) => measured.has(id)));
  return [
    `<path class="photo-spots-under" d="${all}"/><path class="photo-spots" d="${all}"/>`,
    line === '' ? '' : `<path class="photo-spots-measured" d="${line}"/>`,
  ];
}

function pointMarkup(
  { id, at: [x, y] }: Marks['landmarks'][number],
  radius: number,
  label: string,
  { name, measured }: OverlayWords,
): string {
  const role = measured.has(id) ? 'photo-point photo-measured' : 'photo-point';
  return `<g><title>${escapeText(name(id))}</title><circle class="${role}" cx="${px(x)}" cy="${px(y)}" r="${px(radius)}"/>${label}</g>`;
}

function labelMarkup({ x, y, anchor }: LabelPlace, number: number, letters: number): string {
  const end = anchor === 'end' ? ' text-anchor="end"' : '';
  return `<text class="photo-number" x="${px(x)}" y="${px(y)}"${end} font-size="${px(letters)}">${number}</text>`;
}

function breakMarkup(
  landmark: string,
  points: Marks['breaks'][number]['points'],
  { name }: OverlayWords,
): string {
  const d = points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join('');
  return `<g><title>${escapeText(name(landmark))}</title><path class="photo-break-under" d="${d}"/><path class="photo-break" d="${d}"/></g>`;
}

/** The bar lies on the bar of the picture; its length stands beyond the end that has more room. */
function barMarkup(
  { from, to, mm }: NonNullable<Marks['scale']>,
  { letters, width }: { letters: number; width: number },
  { bar }: OverlayWords,
): string {
  const [left, right] = from[0] <= to[0] ? [from, to] : [to, from];
  const length = Math.hypot(right[0] - left[0], right[1] - left[1]) || 1;
  const half = (letters * 0.55) / length;
  const [acrossX, acrossY] = [(left[1] - right[1]) * half, (right[0] - left[0]) * half];
  const tick = ([x, y]: readonly [number, number]) =>
    `M${px(x - acrossX)} ${px(y - acrossY)}L${px(x + acrossX)} ${px(y + acrossY)}`;
  const d = `M${px(left[0])} ${px(left[1])}L${px(right[0])} ${px(right[1])}${tick(left)}${tick(right)}`;
  const isRoomRight = width - right[0] >= left[0];
  const [x, y] = isRoomRight ? [right[0] + letters * 0.7, right[1]] : [left[0] - letters * 0.7, left[1]];
  const anchor = isRoomRight ? 'start' : 'end';
  return `<path class="photo-bar-under" d="${d}"/><path class="photo-bar" d="${d}"/><text class="photo-bar-words" text-anchor="${anchor}" x="${px(x)}" y="${px(y)}" dy=".35em" font-size="${px(letters)}">${escapeText(bar(mm))}</text>`;
}

function px(value: number): string {
  return String(Math.round(value * 10) / 10);
}
