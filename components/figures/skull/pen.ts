import { distanceBetween, type PlanePoint } from '../../../analysis/geometry/index.ts';
import { linePath } from './compact-path.ts';

/** Direction in which shadows fall: the light comes from the upper left, as scientific plates have it (common practice). */
export const shadowFall: PlanePoint = [0.52, 0.854];

export interface PenStroke {
  /** Width of a line that neither faces the light nor turns from it, in units of the trait. */
  readonly width: number;
  /** 1 where the bone lies to the right of the line's course, -1 to the left: only so does it know its shadow side. */
  readonly turn: 1 | -1;
  /** How much the line swells on the shadow side; 0 for an even line. */
  readonly swell: number;
  /** Share of the width at a point, where the line is not equally sure everywhere. */
  readonly sureness?: (point: PlanePoint) => number;
}

const tipShare = 0.28;
const smoothing = 3;

/** Path data of a line drawn with a pen that swells away from the light and thins to its ends, as a filled outline. */
export function penStroke(line: readonly PlanePoint[], { width, turn, swell, sureness }: PenStroke): string {
  if (line.length < 2) return '';
  const normals = line.map((_, index) => outwardNormal(line, index, turn));
  const ways = runningLength(line);
  const total = ways.at(-1)!;
  const widths = normals.map(([x, y], index) => {
    const facing = x * shadowFall[0] + y * shadowFall[1];
    const toEnd = Math.min(ways[index]!, total - ways[index]!);
    const taper = Math.min(1, tipShare + toEnd / (width * 9));
    return (
      width *
      (0.72 + 0.75 * Math.max(0, facing) * swell + 0.1 * facing) *
      taper *
      (sureness?.(line[index]!) ?? 1)
    );
  });
  const halves = widths.map((_, index) => meanAround(widths, index) / 2);
  const side = (sign: number) =>
    line.map(([x, y], index): PlanePoint => {
      const [normalX, normalY] = normals[index]!;
      return [x + normalX * halves[index]! * sign, y + normalY * halves[index]! * sign];
    });
  return linePath([...side(1), ...side(-1).reverse()], 'closed');
}

function outwardNormal(line: readonly PlanePoint[], index: number, turn: 1 | -1): PlanePoint {
  const before = line[Math.max(0, index - 2)]!;
  const after = line[Math.min(line.length - 1, index + 2)]!;
  const length = distanceBetween(before, after) || 1;
  return [((after[1] - before[1]) * turn) / length, (-(after[0] - before[0]) * turn) / length];
}

function runningLength(line: readonly PlanePoint[]): number[] {
  let way = 0;
  return line.map((point, index) => (way += index === 0 ? 0 : distanceBetween(line[index - 1]!, point)));
}

function meanAround(values: readonly number[], index: number): number {
  const near = values.slice(Math.max(0, index - smoothing), index + smoothing + 1);
  return near.reduce((sum, value) => sum + value, 0) / near.length;
}
