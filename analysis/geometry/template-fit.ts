import { findFold, gridOver } from './fold.ts';
import { isInRing, type PlanePoint, type Shape } from './plane.ts';
import type { DrawingTemplate, TemplateStop } from './template.ts';
import { LandmarksCoincide } from './thin-plate-spline.ts';
import { fitWarp, type Warp } from './warp.ts';

/** A template's way to an animal, or the two landmarks between which its bone would fold. */
export type TemplateFit = { readonly warp: Warp } | { readonly foldsBetween: readonly [string, string] };

/**
 * The warp that gives a template the shape of an animal, by the landmarks that both have. Bone is looked at for folds at
 * its stops and on a grid of six units inside it. Landmarks that meet on their way would pass through each other, which
 * is a fold too. Throws for fewer than three shared landmarks and for landmarks all on one line.
 */
export function fitTemplate(template: DrawingTemplate, landmarks: Shape): TemplateFit {
  const from = templateShape(template);
  try {
    const warp = fitWarp(from, landmarks);
    const watched = watchedPoints.get(template) ?? bonePoints(template);
    watchedPoints.set(template, watched);
    const fold = findFold(warp, watched);
    return fold ? { foldsBetween: fold.between } : { warp };
  } catch (error) {
    if (!(error instanceof LandmarksCoincide)) throw error;
    const shared = [...from.keys()].filter((id) => landmarks.has(id));
    return { foldsBetween: [shared[error.pair[0]]!, shared[error.pair[1]]!] };
  }
}

/** Landmarks of a template where it has them itself. */
export function templateShape(template: DrawingTemplate): Shape {
  const shape = templateShapes.get(template) ?? shapeOf(template);
  templateShapes.set(template, shape);
  return shape;
}

function shapeOf({ landmarks }: DrawingTemplate): Shape {
  return new Map(Object.entries(landmarks).map(([id, { at }]) => [id, at]));
}

/** One shape a template: what is worked out from a shape once is then worked out from its template once. */
const templateShapes = new WeakMap<DrawingTemplate, Shape>();

/** Points of a template at which folds are looked for: the same for every animal, and slow to find. */
const watchedPoints = new WeakMap<DrawingTemplate, readonly PlanePoint[]>();

const gridSpacing = 6;

function bonePoints({ pieces, landmarks }: DrawingTemplate): PlanePoint[] {
  const place = (stop: TemplateStop) => (typeof stop === 'string' ? landmarks[stop]!.at : stop);
  const rings = pieces
    .filter(({ kind }) => kind === 'bone')
    .map(({ through = [] }) => through.filter((stop) => stop !== 'corner').map(place));
  const inside = gridOver(rings.flat(), gridSpacing).filter((point) =>
    rings.some((ring) => isInRing(point, ring)),
  );
  return [...rings.flat(), ...inside];
}
