import { simplifyLine, type PlanePoint } from '../../../analysis/geometry/index.ts';

/** How far a line may be from what was worked out, in units of the trait: a twentieth of the thinnest pen. */
const tolerance = 0.03;

/** Path data of a line, closed on request, in relative steps of hundredths. Empty for fewer than two points. */
export function linePath(points: readonly PlanePoint[], close: 'open' | 'closed' = 'open'): string {
  if (points.length < 2) return '';
  const [first, ...rest] = hundredths(simplifyLine(points, tolerance));
  const steps = relativeSteps([first!, ...rest]);
  return `M${pair(first!)}l${steps.map(pair).join(' ').replaceAll(' -', '-')}${close === 'closed' ? 'z' : ''}`;
}

/** Path data of dots, each a stroke without length that a round cap makes visible, in relative steps of tenths. */
export function dotPath(points: readonly PlanePoint[]): string {
  if (points.length === 0) return '';
  const places = points.map(([x, y]): PlanePoint => [Math.round(x * 10) * 10, Math.round(y * 10) * 10]);
  const steps = relativeSteps(places).map((step) => `m${pair(step)}h0`);
  return `M${pair(places[0]!)}h0${steps.join('')}`;
}

function hundredths(points: readonly PlanePoint[]): PlanePoint[] {
  return points.map(([x, y]) => {
    if (!Number.isFinite(x + y)) throw new Error(`a point of a drawing must be finite, not ${x}, ${y}`);
    return [Math.round(x * 100), Math.round(y * 100)];
  });
}

function relativeSteps(places: readonly PlanePoint[]): PlanePoint[] {
  return places.slice(1).map(([x, y], index): PlanePoint => [x - places[index]![0], y - places[index]![1]]);
}

function pair([x, y]: PlanePoint): string {
  const second = short(y);
  return short(x) + (second.startsWith('-') ? '' : ' ') + second;
}

/** Hundredths as a number without what SVG does not need: `-.5` for -50. */
function short(value: number): string {
  return value === 0 ? '0' : String(value / 100).replace(/^(-?)0\./, '$1.');
}
