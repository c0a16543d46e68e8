import { describe, expect, test } from 'vitest';
import { isInRing, type PlanePoint } from '../../../analysis/geometry/index.ts';
import {
  composeSkull as composeAnew,
  type SkullPicture,
} from '../../../components/figures/skull/compose-skull.ts';
import { drawSkull } from '../../../components/figures/skull/draw-skull.ts';
import { placeTemplate, SkullFolds } from '../../../components/figures/skull/place-template.ts';
import type { InkQuality, SkullDrawing } from '../../../components/figures/skull/skull-drawing.ts';
import { skullToSvg, standaloneSvg } from '../../../components/figures/skull/skull-svg.ts';
import { inventedSkulls } from './fixtures/invented-skulls.ts';

/** The same picture serves several tests: one in full ink takes a while. */
const composed = new Map<string, SkullPicture>();
function composeSkull(drawing: SkullDrawing, quality: InkQuality): SkullPicture {
  const key = JSON.stringify([drawing.id, drawing.elements, quality]);
  const picture = composed.get(key) ?? composeAnew(drawing, quality);
  composed.set(key, picture);
  return picture;
}

const find = (id: string): SkullDrawing => inventedSkulls.find((each) => each.id === id)!;
const changed = (id: string, landmarks: Record<string, PlanePoint>): SkullDrawing => {
  const drawing = find(id);
  const moved = Object.entries(landmarks).map(([name, at]) => [name, { at, basis: 'digitised' as const }]);
  return { ...drawing, landmarks: { ...drawing.landmarks, ...Object.fromEntries(moved) } };
};

describe.each(inventedSkulls.map((drawing) => [drawing.id, drawing] as const))(
  'the skull of %s',
  (_, drawing) => {
    test('has every landmark of the trait exactly at its value', () => {
      const { move } = placeTemplate(drawing, 3);
      for (const { landmark, value } of drawing.measured)
        expect(move(drawing.template.landmarks[landmark]!.at)[0]).toBeCloseTo(value, 9);
    });

    test('passes through every digitised landmark', () => {
      const { move } = placeTemplate(drawing, 3);
      for (const [id, { at }] of Object.entries(drawing.landmarks)) {
        const [x, y] = move(drawing.template.landmarks[id]!.at);
        expect(Math.hypot(x - at[0], y - at[1]), id).toBeLessThan(1e-8);
      }
    });

    test('is markup that the content policy lets through', () => {
      const svg = skullToSvg(composeSkull(drawing, 'mini'));
      expect(svg).not.toMatch(/style=|<style|NaN|undefined|Infinity|<script|\son\w+=/);
      expect(svg).toContain('class="skull-accent"');
      const ids = [...svg.matchAll(/\bid="([^"]+)"/g)].map((match) => match[1]!);
      const used = [...svg.matchAll(/url\(#([^)]+)\)/g)].map((match) => match[1]!);
      expect(new Set(ids).size).toBe(ids.length);
      expect(used.every((id) => ids.includes(id))).toBe(true);
    });
  },
);

describe('what is bone and what is restored', () => {
  const dotsOf = (drawing: SkullDrawing): PlanePoint[] => {
    const paths = composeSkull(drawing, 'hero').bone.filter(({ role }) => role.startsWith('stipple'));
    return paths.flatMap(({ d }) => {
      let [x, y] = [0, 0];
      return [...d.matchAll(/[Mm](-?[\d.]+) ?(-?[\d.]+)h0/g)].map((match): PlanePoint => {
        [x, y] = [x + Number(match[1]), y + Number(match[2])];
        return [x, y];
      });
    });
  };

  test('a whole skull has neither dashes, ruling nor a torn edge', () => {
    const picture = composeSkull(find('fen-hog'), 'hero');
    expect(picture.restored).toEqual([]);
    expect(picture.torn).toEqual([]);
    expect(picture.cuts.size).toBe(0);
  });

  test('stipple stands on preserved bone only', () => {
    const drawing = find('no-face');
    const { regions, placed } = composeSkull(drawing, 'outline');
    const dots = dotsOf(drawing);
    expect(dots.length).toBeGreaterThan(1500);
    const bones = placed.pieces.filter(({ piece }) => piece.kind === 'bone');
    const isBone = (point: PlanePoint) =>
      bones.some(
        ({ piece, points }) => !regions.get(piece.part)!.isRestored(point) && isInRing(point, points),
      );
    // Places are rounded to a tenth and cells are half a unit wide, so a dot on the very edge may fall outside.
    const around = Array.from({ length: 8 }, (_, step) => [
      0.6 * Math.cos((step * Math.PI) / 4),
      0.6 * Math.sin((step * Math.PI) / 4),
    ]);
    const astray = dots.filter(
      ([x, y]) => !isBone([x, y]) && !around.some(([dx, dy]) => isBone([x + dx!, y + dy!])),
    );
    expect(astray).toEqual([]);
  });

  test('the torn edge is the same in every quality, so that live lines fit the picture beneath', () => {
    const edges = (['outline', 'hero', 'mini'] as const).map(
      (quality) => composeSkull(find('no-face'), quality).regions.get('cranium')!.edges,
    );
    expect(edges[1]).toEqual(edges[0]);
    expect(edges[2]).toEqual(edges[0]);
  });

  test('every landmark found on the bone stands on what is preserved, every one from relatives on what is not', () => {
    const { regions } = composeSkull(find('no-face'), 'outline');
    const wrong = Object.entries(find('no-face').landmarks).filter(([id, { at, basis }]) => {
      const part = find('no-face').template.landmarks[id]!.part;
      return regions.get(part)!.isRestored(at) !== (basis === 'relatives');
    });
    expect(wrong).toEqual([]);
  });

  test('the torn edge passes through the points of the break', () => {
    const drawing = find('broken-snout');
    const { regions } = composeSkull(drawing, 'outline');
    const cranium = regions.get('cranium')!.edges.flat();
    for (const [x, y] of drawing.breaks[0]!.points)
      expect(Math.min(...cranium.map((point) => Math.hypot(point[0] - x, point[1] - y)))).toBeLessThan(1e-9);
  });

  test('a part none of whose elements is listed is restored whole, and has no bone', () => {
    const drawing = { ...find('fen-hog'), elements: ['cranium'] };
    const { regions } = composeSkull(drawing, 'outline');
    expect(regions.get('mandible')!.isRestored([90, 30])).toBe(true);
    expect(regions.get('cranium')!.isRestored([90, -30])).toBe(false);
  });

  test('teeth stand only in bone that is there; in restored bone they are dashed', () => {
    const count = (id: string, role: string, layer: 'bone' | 'restored') =>
      composeSkull(find(id), 'outline')[layer].filter((shape) => shape.role === role).length;
    expect(count('fen-hog', 'tooth', 'bone')).toBe(20);
    expect(count('no-face', 'tooth', 'bone')).toBeLessThan(6);
    expect(count('no-face', 'dash-thin', 'restored')).toBeGreaterThan(13);
  });
});

describe('the accent', () => {
  const roles = (id: string) => composeSkull(find(id), 'outline').accent.map(({ role }) => role);

  test('is filled where the value is measured or bounded, and ruled inside a dashed rim where it is inferred', () => {
    expect(roles('fen-hog')).toContain('accent');
    expect(roles('broken-snout')).toContain('accent');
    expect(roles('no-face')).not.toContain('accent');
    expect(roles('no-face')).toContain('accent-ruling');
    expect(roles('no-face')).toContain('accent-rim-dashed');
  });
});

describe('an accent whose place was not seen', () => {
  test('is ruled even where its value was measured', () => {
    const drawing: SkullDrawing = {
      ...find('no-face'),
      id: 'calliper-only',
      accent: { piece: 'nasal-opening', status: 'measured' },
    };
    expect(composeSkull(drawing, 'outline').accent.map(({ role }) => role)).toContain('accent-ruling');
  });
});

describe('a skull that cannot be drawn', () => {
  const refused = (drawing: SkullDrawing) => () => placeTemplate(drawing, 3);

  test('is refused where it folds, and the two landmarks are named', () => {
    const folded = changed('fen-hog', { gonion: [172, -40], 'ramus-rear': [176, 60] });
    expect(refused(folded)).toThrow(SkullFolds);
    expect(refused(folded)).toThrow(/the drawing of fen-hog folds between [a-z-]+ and [a-z-]+/);
  });

  test('is shown as straight lines between its landmarks instead, with the two that do it', () => {
    const folded = changed('fen-hog', { gonion: [172, -40], 'ramus-rear': [176, 60] });
    const { picture, foldsBetween } = drawSkull(folded, 'hero');
    expect(foldsBetween).toHaveLength(2);
    expect(picture.bone.some(({ role }) => role === 'pen')).toBe(true);
    expect(picture.bone.some(({ role }) => role === 'tooth' || role.startsWith('stipple'))).toBe(false);
    expect(skullToSvg(picture)).not.toMatch(/NaN|undefined/);
    expect(drawSkull(find('fen-hog'), 'mini').foldsBetween).toBeUndefined();
  });

  test('is refused where two landmarks change places, and they are named', () => {
    const { landmarks } = find('old-prow');
    const swapped = changed('old-prow', {
      bregma: landmarks['vertex']!.at,
      vertex: landmarks['bregma']!.at,
    });
    expect(refused(swapped)).toThrow(SkullFolds);
  });

  test('is refused where the reading does not stand at its value', () => {
    const drawing = find('high-nose');
    const wrong = { ...drawing, measured: [{ landmark: 'naris-posterior', value: 80 }] };
    expect(refused(wrong)).toThrow(
      /naris-posterior of high-nose stands at (81|80\.9)\d*(\.\d+)?, not at its value 80/,
    );
  });

  test('is refused with fewer than three landmarks', () => {
    const drawing = find('fen-hog');
    const two = { ...drawing, landmarks: Object.fromEntries(Object.entries(drawing.landmarks).slice(0, 2)) };
    expect(refused(two)).toThrow('at least three landmarks, got 2');
  });
});

describe('a skull in full ink', () => {
  const drawn = standaloneSvg(composeSkull(find('reed-trunk'), 'hero'), 900);

  test('stays under 90 kB of markup, and one of a series under 36 kB', () => {
    expect(drawn.length).toBeLessThan(90_000);
    expect(standaloneSvg(composeSkull(find('reed-trunk'), 'mini'), 900).length).toBeLessThan(36_000);
  });

  test('is the same to the byte when drawn twice', () => {
    expect(standaloneSvg(composeAnew(find('reed-trunk'), 'hero'), 900)).toBe(drawn);
  });

  test('is markup that the content policy lets through', () => {
    expect(drawn).not.toMatch(/style=|<style|NaN|undefined|Infinity/);
  });
});
