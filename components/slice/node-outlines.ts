import {
  fitTemplate,
  type DrawingTemplate,
  warpPoints,
  type PreparedPoints,
  type Shape,
} from '../../analysis/geometry/index.ts';
import type { CompiledShapes } from '../../scripts/compile/contract.ts';

/** Shape of a node out of the list of coordinates that the compiled lineage holds. */
export function shapeOfNode({ landmarks }: CompiledShapes, at: ArrayLike<number>): Shape {
  return new Map(landmarks.map((id, index) => [id, [at[2 * index]!, at[2 * index + 1]!] as const]));
}

/** An outline in the form of a shape, x and y of each point in tenths of a unit; undefined where the template would fold. */
export function findShapedOutline(
  template: DrawingTemplate,
  prepared: PreparedPoints,
  shape: Shape,
): number[] | undefined {
  const fit = fitTemplate(template, shape);
  if ('foldsBetween' in fit) return undefined;
  const { x, y } = warpPoints(fit.warp, prepared);
  return Array.from(x).flatMap((across, point) => [Math.round(across * 10), Math.round(y[point]! * 10)]);
}
