import { describe, expect, test } from 'vitest';
import { composeSection } from '../../../components/figures/section/compose-section.ts';
import { composeSmallSection } from '../../../components/figures/section/compose-small.ts';
import { sectionLayouts } from '../../../components/figures/section/section-layout.ts';
import { sectionScales } from '../../../components/figures/section/section-scales.ts';
import type { Mark, Scene } from '../../../components/figures/scene/scene.ts';
import { sceneToSvg } from '../../../components/figures/scene/svg.ts';
import { plainWords, threeLevels } from './fixture.ts';

const tooth = { drawnMm: 10, mmPerUnit: 0.1, tipMm: 2 };
const compose = (layout: (typeof sectionLayouts)[number]) =>
  composeSection(threeLevels, layout, plainWords, tooth);
const ofRole = ({ marks }: Scene, role: string) =>
  marks.filter((mark) => mark.role.split(' ').includes(role));
const words = ({ shape }: Mark) => (shape.kind === 'text' ? shape.runs.map(({ text }) => text).join('') : '');

describe.each(sectionLayouts)('the figure of a section in the $name format', (layout) => {
  const scene = compose(layout);
  const scales = sectionScales(threeLevels, layout);

  test('has a disc at the mean of each level that has one, and a ring with a question mark for the other', () => {
    const discs = ofRole(scene, 'disc').filter(({ layer }) => layer === 'marks');
    expect(discs.map(({ datum }) => datum)).toEqual(['low', 'high']);
    const [low] = discs;
    expect(low!.shape).toMatchObject({ kind: 'circle', x: scales.x(10), y: scales.y(1) });
    expect(ofRole(scene, 'ring').map(({ datum }) => datum)).toEqual(['middle']);
  });

  test('stands higher levels above lower ones', () => {
    expect(scales.y(9)).toBeLessThan(scales.y(4));
    expect(scales.y(4)).toBeLessThan(scales.y(1));
  });

  test('marks every whole crown by a stroke and every worn one by a half disc on a wall with an arrow', () => {
    const strokes = (role: string) =>
      ofRole(scene, role)
        .filter(({ layer }) => layer === 'strip')
        .map(({ datum, shape }) => [datum, shape.kind === 'path' ? shape.d.match(/M/g)!.length : 0]);
    expect(strokes('individual')).toEqual([
      ['low', 3],
      ['high', 2],
    ]);
    for (const role of ['worn-half', 'worn-wall', 'worn-arrow'])
      expect(strokes(role)).toEqual([
        ['low', 2],
        ['middle', 1],
      ]);
  });

  test('tells dated beds apart from ages between them by line and weight', () => {
    expect(ofRole(scene, 'bed-age')).toHaveLength(2);
    expect(ofRole(scene, 'bed-line').filter(({ layer }) => layer === 'column')).toHaveLength(2);
    const between = ofRole(scene, 'age-tick')
      .map(words)
      .filter((text) => text.startsWith('about'));
    expect(between.length).toBeGreaterThanOrEqual(2);
    expect(between).not.toContain('about 10');
  });

  test('draws coarser rocks wider', () => {
    const [clay, gravel] = ['rock-clay', 'rock-gravel'].map((role) => ofRole(scene, role)[0]!.shape);
    if (clay?.kind !== 'rect' || gravel?.kind !== 'rect') throw new Error('rocks are boxes');
    expect(gravel.width).toBeGreaterThan(clay.width);
    expect(clay.y).toBeGreaterThan(gravel.y);
  });

  test('lays the tooth of a level on the ruler so that its tip stands at the mean', () => {
    const crowns = ofRole(scene, 'skull').filter(
      ({ shape }) => shape.kind === 'use' && shape.target === 'tooth-crown',
    );
    expect(crowns.map(({ datum }) => datum)).toEqual(['low', 'high']);
    for (const { shape, datum } of crowns) {
      if (shape.kind !== 'use') throw new Error('a crown is used');
      const mean = threeLevels.levels.find(({ id }) => id === datum)!.estimate!;
      const tipUnits = tooth.drawnMm / tooth.mmPerUnit;
      expect(shape.x + tipUnits * shape.scale * shape.stretch!).toBeCloseTo(scales.x(mean), 9);
      expect(shape.x).toBeCloseTo(scales.x(0), 9);
    }
  });

  test('stays on its sheet and writes no style', () => {
    for (const { shape } of scene.marks) {
      if (shape.kind !== 'circle' && shape.kind !== 'text' && shape.kind !== 'rect') continue;
      expect(shape.x).toBeGreaterThanOrEqual(0);
      expect(shape.x).toBeLessThanOrEqual(layout.width);
      expect(shape.y).toBeGreaterThanOrEqual(0);
      expect(shape.y).toBeLessThanOrEqual(layout.height);
    }
    const svg = sceneToSvg(scene, 'figure', 'plate', { title: 'title', description: 'description' });
    expect(svg).not.toMatch(/style=|<style/);
    expect(svg).toContain('role="img"');
  });
});

test('a section without dates, rocks or means is drawn all the same', () => {
  const bare = {
    ...threeLevels,
    beds: [],
    rocks: [],
    levels: threeLevels.levels.map((level) => ({ ...level, estimate: null, ageMa: null })),
  };
  const scene = composeSection(bare, sectionLayouts[0], plainWords, undefined);
  expect(ofRole(scene, 'ring')).toHaveLength(3);
  expect(ofRole(scene, 'rock-plain')).toHaveLength(1);
  expect(ofRole(scene, 'bed-age')).toEqual([]);
});

test('the same request gives the same scene', () => {
  expect(compose(sectionLayouts[0])).toEqual(compose(sectionLayouts[0]));
});

test('on a card the figure has marks and no words, and none without levels', () => {
  const size = { width: 320, height: 220, markScale: 0.6 };
  const scene = composeSmallSection(threeLevels, size)!;
  expect(ofRole(scene, 'disc').map(({ datum }) => datum)).toEqual(['low', 'high']);
  expect(scene.marks.filter((mark) => words(mark) !== '' && words(mark) !== '?')).toEqual([]);
  expect(composeSmallSection({ ...threeLevels, levels: [] }, size)).toBeUndefined();
});

test('with nothing on the ruler the chart takes the room of the tooth, and its foot stays', () => {
  for (const layout of sectionLayouts) {
    const [drawn, bare] = [tooth, undefined].map((on) => composeSection(threeLevels, layout, plainWords, on));
    const top = (scene: Scene) =>
      Math.min(
        ...ofRole(scene, 'value-line').flatMap(({ shape }) =>
          shape.kind === 'path' ? Number(/^M[\d.]+ ([\d.]+)/.exec(shape.d)![1]) : [],
        ),
      );
    expect(top(bare!)).toBeLessThan(top(drawn!) - 60);
    expect(bare!.height).toBe(drawn!.height);
  }
});
