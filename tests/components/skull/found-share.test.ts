import { resolve } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import type { DrawingTemplate, PlanePoint } from '../../../analysis/geometry/index.ts';
import { drawingsOf } from '../../../components/figures/skull-figures.ts';
import { foundNotes, isFragment } from '../../../components/figures/skull-found.ts';
import { smallSkull, smallSkullStyle } from '../../../components/figures/small-skull.ts';
import { foundShare } from '../../../components/figures/skull/found-share.ts';
import { lineageView, type LineageView } from '../../../components/lineage/view.ts';
import { compileLineage } from '../../../scripts/compile/index.ts';

/** Two boxes: a face of 100 by 60 with eight landmarks, and a jaw of 100 by 20 with two. */
function boxes(undrawn?: readonly number[]): DrawingTemplate {
  const ring = (top: number, bottom: number) =>
    ([[0, top], [100, top], [100, bottom], [0, bottom], [0, top]] as const).flatMap((at) => [at, 'corner']); // prettier-ignore
  const face: PlanePoint[] = [[0, 0], [50, 0], [100, 0], [100, 30], [100, 60], [50, 60], [0, 60], [0, 30]]; // prettier-ignore
  const jaw: PlanePoint[] = [[0, 70], [100, 90]]; // prettier-ignore
  const landmarks = (places: readonly PlanePoint[], part: string) =>
    places.map((at, index) => [`${part}-${index}`, { at, part, bone: part }]);
  return {
    id: 'boxes',
    view: 'left',
    frame: { zero: 'face-0', hundred: 'face-2', level: [] },
    parts: { face: { elements: ['face'] }, jaw: { elements: ['jaw'] } },
    landmarks: Object.fromEntries([...landmarks(face, 'face'), ...landmarks(jaw, 'jaw')]),
    pieces: [
      { id: 'face', kind: 'bone', part: 'face', bone: 'face', through: ring(0, 60), undrawn },
      { id: 'jaw', kind: 'bone', part: 'jaw', bone: 'jaw', through: ring(70, 90) },
    ],
    shading: [],
  } as unknown as DrawingTemplate; // courses of places and corners, as a template file gives them
}

function shareOf(elements: readonly string[], undrawn?: readonly number[]): number {
  const template = boxes(undrawn);
  const landmarks = Object.fromEntries(
    Object.entries(template.landmarks).map(([id, { at, part }]) => [
      id,
      { at, basis: elements.includes(part) ? ('digitised' as const) : ('relatives' as const) },
    ]),
  );
  return foundShare({ id: 'boxes', template, landmarks, elements, breaks: [], measured: [] });
}

describe('how much of a skull was found', () => {
  test('is the share of its outline that is there, however many landmarks stand on it', () => {
    expect(shareOf(['face', 'jaw'])).toBe(1);
    expect(shareOf(['face'])).toBeCloseTo(320 / (320 + 240), 9);
    expect(shareOf(['jaw'])).toBeCloseTo(240 / (320 + 240), 9);
    expect(shareOf([])).toBe(0);
  });

  test('leaves out edges that are not drawn', () => {
    expect(shareOf(['jaw'], [0])).toBeCloseTo(240 / (220 + 240), 9);
  });
});

describe('of the bundled lineage', () => {
  let view: LineageView;
  beforeAll(async () => {
    const { compiled } = await compileLineage(resolve(import.meta.dirname, '../../../content/reed-trunks'));
    view = lineageView(compiled!, 'en');
  });

  test('one skull is a fragment: its face was never found', () => {
    const fragments = drawingsOf(view).filter((drawing) => isFragment(view, drawing));
    expect(fragments.map(({ taxon }) => taxon)).toEqual(['calathorhina-mira']);
  });

  test('cards say how much was found where it is not all', () => {
    const said = Object.fromEntries(
      drawingsOf(view).flatMap((drawing) =>
        foundNotes(view, drawing).map((note) => [drawing.taxon, note] as const),
      ),
    );
    expect(said['calathorhina-mira']).toMatch(/^[3-6]\d% of the outline of its bones was found\.$/);
    expect(said['limnorhina-fracta']).toMatch(/^[89]\d% of the outline of its bones was found\.$/);
    expect(said['palustrina-communis']).toBeUndefined();
    expect(said['riparhina-dura']).toBeUndefined();
  });

  test('a small picture of a fragment shows its bone alone, and of others all', async () => {
    expect(await smallSkull(view, 'calathorhina-mira')).toMatch(/^<g class="fragment">.*skull-restored/);
    expect(await smallSkull(view, 'limnorhina-fracta')).not.toContain('class="fragment"');
    expect(smallSkullStyle).toMatch(/\.fragment :is\(\.skull-restored,.*display:none/);
  });
});
