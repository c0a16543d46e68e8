import type { CompiledSection, CompiledTemplate } from '../../../scripts/compile/contract.ts';
import type { DrawingTemplate } from '../../../analysis/geometry/index.ts';
import type { SkullDrawing } from '../skull/skull-drawing.ts';

/** A tooth whose crown has a height: the crown as it was measured, the roots as the template has them. */
export interface ToothParts {
  readonly crown: SkullDrawing;
  readonly roots: SkullDrawing;
  /** Where the height is measured from, in the frame of the drawings, where y runs down along the axis of the crown. */
  readonly base: readonly [number, number];
  readonly tip: readonly [number, number];
  /** Millimetres in one unit of the drawings. */
  readonly mmPerUnit: number;
}

/**
 * A tooth of a given crown height from a template whose y is the axis of the crown: what belongs to the part of the crown is
 * stretched along it, so that the tip stands at the height; nothing else of it was measured. Undefined where the records name
 * no drawing, or the template lacks its landmarks.
 */
export function findToothParts(
  drawing: CompiledSection['drawing'],
  templates: readonly CompiledTemplate[],
  heightMm: number,
  id: string,
): ToothParts | undefined {
  const template = templates.find((each) => each.id === drawing?.template) as DrawingTemplate | undefined; // the same shape
  const [from, to] = [drawing?.from, drawing?.to].map((name) => template?.landmarks[name ?? '']);
  if (!drawing || !template || !from || !to) return undefined;
  const mmPerUnit = drawing.crownLengthMm / 100;
  const stretch = heightMm / mmPerUnit / Math.abs(to.at[1] - from.at[1]);
  const part = to.part;
  const moved = ([x, y]: readonly [number, number]) => [x, from.at[1] + (y - from.at[1]) * stretch] as const;
  const landmarks = Object.entries(template.landmarks).map(([name, landmark]) => [
    name,
    {
      at: landmark.part === part ? moved(landmark.at) : landmark.at,
      basis: landmark.part === part ? 'digitised' : 'relatives',
    } as const,
  ]);
  const { elements } = template.parts[part]!;
  const ofPart = (wanted: boolean): SkullDrawing => ({
    id: `${id}-${wanted ? 'crown' : 'roots'}`,
    template: {
      ...template,
      pieces: template.pieces.filter((piece) => (piece.part === part) === wanted && piece.kind !== 'opening'),
      shading: template.shading.filter(({ piece }) =>
        template.pieces.some((each) => each.id === piece && (each.part === part) === wanted),
      ),
    },
    landmarks: Object.fromEntries(landmarks),
    elements: elements.filter((name) => ownElement(name, part, template)),
    breaks: [],
    measured: [],
  });
  return { crown: ofPart(true), roots: ofPart(false), base: from.at, tip: moved(to.at), mmPerUnit };
}

/** Whether a name means this part alone, so that no other part counts as preserved with it. */
function ownElement(name: string, part: string, { parts }: DrawingTemplate): boolean {
  return Object.entries(parts).every(([id, { elements }]) => id === part || !elements.includes(name));
}
