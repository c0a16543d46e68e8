import type { Measured } from './bench-record.ts';
import type { BenchScheme } from './bench-scheme.ts';
import type { Place } from './place.ts';

/**
 * The wide sheet of landmarks, one row a round: specimen, repeat, and x and y of each landmark in px of the picture. A point
 * that is not there leaves its two cells empty; a round without any point is left out.
 */
export function sheetText(specimens: readonly Measured[], landmarks: readonly string[]): string {
  const header = ['specimen', 'repeat', ...landmarks.flatMap((id) => [`${id}.x`, `${id}.y`])];
  const rows = specimens.flatMap(({ specimen, rounds }) =>
    rounds
      .filter((round) => landmarks.some((id) => round[id]))
      .map((round, index) => [
        specimen,
        String(index + 1),
        ...landmarks.flatMap((id) => (round[id] ? round[id].map(pxText) : ['', ''])),
      ]),
  );
  return [header, ...rows].map((cells) => `${cells.join(',')}\n`).join('');
}

/** The part of specimens.yaml that goes under each specimen: its points with their scale, and what is lost where it breaks. */
export function recordText(
  specimens: readonly Measured[],
  view: string,
  sheet = 'sheets/landmarks.csv',
): string {
  return specimens.map((measured) => specimenText(measured, view, sheet)).join('\n');
}

function specimenText(
  { specimen, picture, scale, scaleMm, breaks }: Measured,
  view: string,
  sheet: string,
): string {
  const [from, to] = scale;
  const lost = Object.entries(breaks).filter(([, places]) => places.length > 0);
  return [
    `# ${specimen}`,
    ...(lost.length > 0 ? ['  lost:'] : []),
    ...lost.map(([id, places]) => `    - { landmark: ${id}, break: [${places.map(placeText).join(', ')}] }`),
    '  landmarks:',
    `    view: ${view}`,
    `    sheet: ${sheet}`,
    ...(picture ? [`    picture: ${JSON.stringify(`images/${picture.name}`)}`] : []),
    ...(picture?.mirrored ? ['    mirrored: true'] : []),
    ...(from && to && scaleMm > 0
      ? [`    scale: { from: ${placeText(from)}, to: ${placeText(to)}, mm: ${scaleMm} }`]
      : []),
    '',
  ].join('\n');
}

function placeText(place: Place): string {
  return `[${place.map(pxText).join(', ')}]`;
}

function pxText(px: number): string {
  return px.toFixed(1);
}

/** Landmarks, view and measurements of names that the user typed, as scheme.yaml defines them. */
export function schemeText({ landmarks, measurements }: BenchScheme, view: string): string {
  return [
    'views:',
    `  - { id: ${view} }`,
    'landmarks:',
    ...landmarks.map(
      ({ id, name }) => `  - { id: ${id}, name: { en: ${JSON.stringify(name)} }, views: [${view}] }`,
    ),
    ...(measurements.length > 0 ? ['measurements:'] : []),
    ...measurements.map(({ from, to }) => `  - { id: ${from}-to-${to}, from: ${from}, to: ${to} }`),
    '',
  ].join('\n');
}
