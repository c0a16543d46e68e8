import type { DrawingTemplate, PlanePoint } from '../../../analysis/geometry/index.ts';

/** Whether a point was found on the specimen or worked out from relatives. */
export type LandmarkBasis = 'digitised' | 'relatives';

/** How the value that the accent stands for is known. */
export type AccentStatus = 'measured' | 'bounded' | 'inferred';

/**
 * All that a skull is drawn from, in the drawing frame: x is a value of the trait, y has the same scale and runs down.
 * Landmarks that are in neither the drawing nor a break follow the template and say nothing about what is preserved.
 */
export interface SkullDrawing {
  /** Begins the ids in the markup and seeds what is scattered. */
  readonly id: string;
  readonly template: DrawingTemplate;
  readonly landmarks: Readonly<Record<string, { readonly at: PlanePoint; readonly basis: LandmarkBasis }>>;
  /** Elements that the specimen preserves, by the names of the records. */
  readonly elements: readonly string[];
  /** Lost landmarks, with the places where the bone ends before each. */
  readonly breaks: readonly { readonly landmark: string; readonly points: readonly PlanePoint[] }[];
  /** The piece that the trait is about; left out where the template has none. */
  readonly accent?: { readonly piece: string; readonly status: AccentStatus };
  /** Landmarks that define the trait, with the value at which each must stand. */
  readonly measured: readonly { readonly landmark: string; readonly value: number }[];
}

/** How a skull is worked out: a plain outline, full ink for one large figure, coarser ink for a card, the heaviest for small ones. */
export type InkQuality = 'outline' | 'hero' | 'card' | 'mini';
