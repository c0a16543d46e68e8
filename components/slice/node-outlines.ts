import {
  applyWarp,
  fitTemplate,
  type DrawingTemplate,
  type PlanePoint,
  type Shape,
} from '../../analysis/geometry/index.ts';
import type { CompiledShapes } from '../../scripts/compile/contract.ts';
import type { TemplateOutline } from './template-outline.ts';

/** Shape of a node out of the list of coordinates that the compiled lineage holds. */
export function shapeOfNode({ landmarks }: CompiledShapes, at: ArrayLike<number>): Shape {
  return new Map(landmarks.map((id, index) => [id, [at[2 * index]!, at[2 * index + 1]!] as const]));
}

/** An outline in the form of a shape, x and y of each point in tenths of a unit; undefined where the template would fold. */
export function findShapedOutline(
  template: DrawingTemplate,
  { points }: TemplateOutline,
  shape: Shape,
): number[] | undefined {
  const fit = fitTemplate(template, shape);
  if ('foldsBetween' in fit) return undefined;
  return points.flatMap((point: PlanePoint) => {
    const [x, y] = applyWarp(fit.warp, point);
    return [Math.round(x * 10), Math.round(y * 10)];
  });
}
