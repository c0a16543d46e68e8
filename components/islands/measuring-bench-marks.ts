import type { Place } from '../measuring/place.ts';

/** One mark on the stage: where it stands there, what it is, and its number if it has one. */
export interface StageMark {
  readonly at: Place;
  readonly kind: 'scale' | 'line' | 'landmark' | 'break';
  readonly number: string;
  readonly inHand: boolean;
}

const markShapes: Record<StageMark['kind'], string> = {
  scale: 'M0,-11V11M-5,-11H5M-5,11H5',
  line: 'M-11,0H11M0,-5V5',
  landmark: 'M-8,0A8,8 0 1 0 8,0A8,8 0 1 0 -8,0M0,-3V3M-3,0H3',
  break: 'M-7,8L-3,0L3,3L7,-8',
};

/** The marks as one drawing, each in two tones so that it is seen on bone and on a dark ground. */
export function drawMarks(
  marks: readonly StageMark[],
  lines: readonly (readonly [Place, Place])[],
  cross: Place | undefined,
): string {
  return [
    ...lines.map(([[x1, y1], [x2, y2]]) => twice(`M${x1},${y1}L${x2},${y2}`, 'mark-line')),
    ...marks.map(
      ({ at: [x, y], kind, number, inHand }) =>
        `<g transform="translate(${x} ${y})" class="mark mark-${kind}${inHand ? ' mark-in-hand' : ''}">${twice(markShapes[kind], '')}${
          number === '' ? '' : `<text x="11" y="-8">${number}</text>`
        }</g>`,
    ),
    ...(cross ? [crossAt(cross)] : []),
  ].join('');
}

/** A cross that leaves its middle open, so that the bone is seen at the place itself. */
function crossAt([x, y]: Place): string {
  return `<g class="mark-cross" transform="translate(${x} ${y})">${twice('M-26,0H-5M5,0H26M0,-26V-5M0,5V26', '')}</g>`;
}

function twice(path: string, name: string): string {
  return `<path class="mark-under ${name}" d="${path}"/><path class="mark-over ${name}" d="${path}"/>`;
}
