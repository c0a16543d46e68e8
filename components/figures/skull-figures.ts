import type { CompiledDrawing } from '../../scripts/compile/contract.ts';
import { href } from '../href.ts';
import type { LineageView } from '../lineage/view.ts';
import type { SkullAnchors } from './scene/focus.ts';
import { inkMarkup, limitMarkup, ownMarkup } from './skull-markup.ts';
import type { AccentStatus, SkullDrawing } from './skull/skull-drawing.ts';

/** The points where each animal's skull is read, for those that have a drawing of the trait in view. */
export function skullAnchors(view: LineageView): ReadonlyMap<string, SkullAnchors> {
  const line = view.trait.measured;
  if (line?.end === undefined) return new Map();
  return new Map(
    drawingsOf(view).flatMap((drawing): [string, SkullAnchors][] => {
      const found = anchorsOf(drawing, line.from, line.to, line.end!, lengthsOf(view, drawing));
      return found ? [[drawing.taxon, found]] : [];
    }),
  );
}

/** Drawings of the trait in view that have a template to give shape to. */
export function drawingsOf(view: LineageView): CompiledDrawing[] {
  const templates = new Set(view.lineage.templates?.map(({ id }) => id));
  return view.lineage.drawings.filter(
    ({ trait, template }) => trait === view.trait.id && template !== undefined && templates.has(template),
  );
}

/** Address of the small picture of one skull. */
export function smallSkullAddress({ lineage }: LineageView, taxon: string): string {
  return `${href(lineage.lineage, 'skulls', 'small')}${taxon}.svg`;
}

/**
 * One skull as a group `skull-<taxon>` in the drawing frame, with the ends of what is restored; plates call it by that id. An
 * `outline` has no stipple: it stands in the page and makes room for the `hero` in full ink when that has come. Empty for an
 * animal without a drawing.
 */
export async function skullGroup(
  view: LineageView,
  taxon: string,
  quality: 'outline' | 'hero' = 'hero',
): Promise<string> {
  const found = drawingsOf(view).find((drawing) => drawing.taxon === taxon);
  const skull = found && skullDrawing(found, view);
  if (!skull) return '';
  if (found.own) return `<g id="skull-${taxon}">${ownMarkup(found.own)}</g>`;
  const reading = view.trait.measured?.to ?? '';
  const outline = quality === 'outline' ? ' data-outline=""' : '';
  const markup = (await inkMarkup(skull, quality)) + limitMarkup(skull, reading, found.limits);
  return `<g id="skull-${taxon}"${outline}>${markup}</g>`;
}

function anchorsOf(
  drawing: CompiledDrawing,
  from: string,
  to: string,
  end: string,
  mm: SkullAnchors['mm'],
): SkullAnchors | undefined {
  const [zero, reading, hundred] = [from, to, end].map((id) => drawing.points[id]?.at);
  if (!zero || !reading || !hundred) return undefined;
  const start = drawing.broken ? rearmost(drawing) : undefined;
  return { zero: start ?? zero, reading, hundred, broken: drawing.broken, mm, mmPerUnit: drawing.mmPerUnit };
}

/** Part and whole in mm of the one specimen that a drawing is of; a broken one is measured from its break. */
function lengthsOf(view: LineageView, drawing: CompiledDrawing): SkullAnchors['mm'] {
  const [only, ...others] = drawing.specimens;
  if (only === undefined || others.length > 0) return undefined;
  const { working } = view.findValue(drawing.taxon)?.limits ?? {};
  const reading = drawing.broken
    ? working
    : view.findSpecimen(only)?.values.find(({ trait }) => trait === drawing.trait);
  return reading?.part && reading.whole ? { part: reading.part.mm, whole: reading.whole.mm } : undefined;
}

/** The point of the break that the ruler starts at. */
function rearmost(drawing: CompiledDrawing): readonly [number, number] | undefined {
  return drawing.breaks.flatMap(({ points }) => points).sort((a, b) => b[0] - a[0])[0];
}

/** A drawing as the renderer takes it; undefined without a template. */
export function skullDrawing(drawing: CompiledDrawing, view: LineageView): SkullDrawing | undefined {
  const template = view.lineage.templates?.find(({ id }) => id === drawing.template);
  if (!template) return undefined;
  const status = view.findValue(drawing.taxon)?.status;
  const accent: AccentStatus = status === 'bounded' || status === 'inferred' ? status : 'measured';
  const piece = view.trait.accent;
  const { landmarks, reading } = atValue(drawing, view);
  const measured = [view.trait.measured?.from, view.trait.measured?.end].flatMap((landmark, index) =>
    landmark !== undefined && !(drawing.broken && index === 0) ? [{ landmark, value: index * 100 }] : [],
  );
  return {
    id: `skull-${drawing.taxon}`,
    template,
    landmarks,
    elements: drawing.elements,
    breaks: drawing.breaks,
    ...(piece !== undefined &&
      template.pieces.some(({ id }) => id === piece) && { accent: { piece, status: accent } }),
    measured: reading ? [...measured, reading] : measured,
  };
}

/**
 * The points of a drawing with the reading at the value that is printed: the mean also counts specimens that were never
 * digitised, so the drawn mean can lie a little beside it. A broken skull reads what its own bone reads.
 */
function atValue(
  drawing: CompiledDrawing,
  view: LineageView,
): { landmarks: CompiledDrawing['points']; reading?: { landmark: string; value: number } } {
  const landmark = view.trait.measured?.to;
  const estimate = view.findValue(drawing.taxon)?.estimate;
  const point = landmark === undefined ? undefined : drawing.points[landmark];
  if (landmark === undefined || !point || drawing.broken || estimate === null || estimate === undefined)
    return { landmarks: drawing.points };
  const moved = {
    ...drawing.points,
    [landmark]: { ...point, at: [estimate, point.at[1]] as [number, number] },
  };
  return { landmarks: moved, reading: { landmark, value: estimate } };
}
