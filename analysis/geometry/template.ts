import type { PlanePoint } from './plane.ts';

/** How a piece is drawn: filled bone, a pit in it, the eye socket, the trait's opening, a line on bone, a tooth, a hole. */
export type PieceKind =
  'bone' | 'hollow' | 'socket' | 'opening' | 'suture' | 'crest' | 'foramen' | 'tooth' | 'hole';

/** A stop of a course: a landmark by id, a free point that goes with the warp, or a sharp bend at the stop before. */
export type TemplateStop = string | PlanePoint;

/** One curve of a template, with the bone and the part that it belongs to. */
export interface TemplatePiece {
  readonly id: string;
  readonly kind: PieceKind;
  readonly part: string;
  readonly bone: string;
  readonly through?: readonly TemplateStop[];
  /** Runs between corners, counted from 0, that close the piece but have no edge of their own. */
  readonly undrawn?: readonly number[];
  /** Weight of a line against the outline; 1 when left out. */
  readonly weight?: number;
  /** Middle of a hole. */
  readonly at?: string;
  readonly radii?: PlanePoint;
}

/** A drawing of one view of one kind of animal, which takes the shape of each by its landmarks. */
export interface DrawingTemplate {
  readonly id: string;
  readonly view: string;
  readonly frame: { readonly zero: string; readonly hundred: string; readonly level: readonly string[] };
  readonly parts: Readonly<Record<string, { readonly elements: readonly string[] }>>;
  readonly landmarks: Readonly<
    Record<string, { readonly at: PlanePoint; readonly part: string; readonly bone: string }>
  >;
  readonly pieces: readonly TemplatePiece[];
  readonly shading: readonly {
    readonly piece: string;
    readonly at: PlanePoint;
    readonly radii: PlanePoint;
    readonly strength: number;
  }[];
}
