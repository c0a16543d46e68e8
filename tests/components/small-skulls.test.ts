import { expect, test } from 'vitest';
import { key, keyBox, type KeyWords } from '../../components/figures/scene/key.ts';
import { overlap } from '../../components/figures/scene/label-slots.ts';
import { layouts, phone, tall, wide } from '../../components/figures/scene/layout.ts';
import { plateData } from '../../components/figures/scene/plate-data.ts';
import { plateScales } from '../../components/figures/scene/scales.ts';
import { placeSmallSkulls, smallSkullMarks } from '../../components/figures/scene/small-skulls.ts';
import { findSmallSkulls } from '../../components/lineage/small-skulls.ts';
import { storyPlan } from '../../components/lineage/story-plan.ts';
import { lineageView } from '../../components/lineage/view.ts';
import { interfaceLanguages, voiceOf } from '../../components/messages/say.ts';
import { inventedLineage } from './fixtures/invented-lineage.ts';

const ages = [0, 3, 8, 14, 21, 27, 33, 33.5, 36, 41, 46, 51];
const tips = ages.map((age, index) => ({
  id: `animal-${index}`,
  name: `Ixa number${'abcdefghijkl'[index]}`,
  from: age,
  to: age,
  value: 10 + index,
}));
const lineage = inventedLineage(tips);
const data = plateData(lineage, lineage.traits[0]!, 'en');
const scales = plateScales(data, wide);
const skulls = { aspect: 1.6, pictures: tips.map(({ id }) => ({ taxon: id, href: `/${id}.svg` })) };
const rows = ['measured', 'bounded', 'inferred', 'unknown', 'bar', 'bed', 'ghost'] as const;
const wordsIn = (language: string): KeyWords => {
  const voice = voiceOf(language);
  return Object.fromEntries(
    rows.map((row) => [row, { word: voice.say(`key.${row}`), note: voice.say(`key.${row}.note`) }]),
  ) as KeyWords;
};
const words = wordsIn('en');

test('small skulls stand with their middle at their true age', () => {
  const placed = placeSmallSkulls(skulls, data, wide, scales, []);
  expect(placed.length).toBeGreaterThanOrEqual(9);
  for (const { taxon, top, left, right } of placed)
    expect(top + (right - left) / skulls.aspect / 2).toBeCloseTo(scales.y(taxon.placedMa), 9);
});

test('no small skull covers another, or what the page keeps', () => {
  const taken = [...wide.skulls!.kept, keyBox(wide, words)!];
  const placed = placeSmallSkulls(skulls, data, wide, scales, taken);
  for (const [index, one] of placed.entries())
    for (const other of [...placed.slice(index + 1), ...taken]) expect(overlap(one, other)).toBe(false);
  for (const { bottom } of placed) expect(bottom).toBeLessThanOrEqual(wide.height);
});

test('the dearest skull has the first choice', () => {
  const last = tips.at(-1)!.id;
  const order = { ...skulls, pictures: skulls.pictures.toReversed() };
  expect(placeSmallSkulls(order, data, wide, scales, [])[0]!.taxon.id).toBe(last);
});

test('two skulls are no series, and an animal that the plate lacks is passed over', () => {
  const few = { ...skulls, pictures: [...skulls.pictures.slice(0, 2), { taxon: 'nobody', href: '/x.svg' }] };
  expect(placeSmallSkulls(few, data, wide, scales, [])).toEqual([]);
});

test('a phone and a tall screen have no small skulls', () => {
  for (const layout of [phone, tall])
    expect(placeSmallSkulls(skulls, data, layout, plateScales(data, layout), [])).toEqual([]);
});

test('every small skull has its name beside it, cut where it is too long', () => {
  const long = inventedLineage(tips.map((tip) => ({ ...tip, name: `Ixa ${'longissima'.repeat(4)}` })));
  const plate = plateData(long, long.traits[0]!, 'en');
  const placed = placeSmallSkulls(skulls, plate, wide, scales, []);
  const names = smallSkullMarks(placed, wide, scales, []).flatMap(({ role, shape }) =>
    role === 'taxon-name' && shape.kind === 'text' ? shape.runs.map(({ text }) => text) : [],
  );
  expect(names).toHaveLength(placed.length);
  for (const name of names) expect(name).toMatch(/^I\. long\p{L}*…$/u);
});

const keyed = layouts.filter((layout) => layout.key);
test.each(
  Object.keys(interfaceLanguages).flatMap((language) =>
    keyed.map((layout) => [layout.name, language, layout] as const),
  ),
)('the key of the %s plate stays in its box and on its plate in %s', (_, language, layout) => {
  const box = keyBox(layout, wordsIn(language))!;
  expect(box.right).toBeLessThanOrEqual(layout.width);
  expect(box.bottom).toBeLessThanOrEqual(layout.height);
  for (const { role, shape } of key(layout, wordsIn(language))) {
    if (role !== 'key-word' || shape.kind !== 'text') continue;
    expect(shape.y).toBeGreaterThan(box.top);
    expect(shape.y).toBeLessThan(box.bottom);
  }
});

test('a story names its skulls: the opening, then the first of each step, then the others', () => {
  const plan = storyPlan(
    'Opening <Name of="animal-4" />\n<Step focus="animal-1 animal-2">\n</Step>\n<Step focus="animal-3">\n</Step>',
    lineage.traits[0]!,
  );
  expect(plan.focus).toEqual(['animal-1 animal-2', 'animal-3']);
  const view = lineageView(lineage, 'en');
  expect(findSmallSkulls(view, plan), 'nothing is drawn').toBeUndefined();
});
