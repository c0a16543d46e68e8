import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { composePlate } from '../../components/figures/scene/compose-plate.ts';
import { overlap, type Box } from '../../components/figures/scene/label-slots.ts';
import { phone, wide, type PlateLayout } from '../../components/figures/scene/layout.ts';
import { plateData } from '../../components/figures/scene/plate-data.ts';
import type { Mark } from '../../components/figures/scene/scene.ts';
import { plateWords } from '../../components/figures/plate-words.ts';
import { lineageView, type LineageView } from '../../components/lineage/view.ts';
import { compileLineage } from '../../scripts/compile/index.ts';
import { balancedTree, hardLineages, manyTaxa } from '../site/fixtures/hard-lineages.ts';
import { writeLineage, type HardLineage } from '../site/fixtures/write-lineage.ts';

/** Compiles one hard lineage from its records, as the site does, and gives the view of its page. */
async function viewOf(lineage: HardLineage): Promise<LineageView> {
  const content = await mkdtemp(join(tmpdir(), 'hard-'));
  try {
    await writeLineage(content, lineage);
    const { compiled } = await compileLineage(join(content, lineage.id), { today: '2026-12-01' });
    if (!compiled) throw new Error(`"${lineage.id}" does not compile`);
    return lineageView(compiled, lineage.languages[0]!);
  } finally {
    await rm(content, { recursive: true, force: true });
  }
}

function named(count: number): HardLineage {
  const taxa = manyTaxa(count);
  const plain = hardLineages.find(({ id }) => id === 'two-hundred')!;
  return { ...plain, id: `of-${count}`, taxa, newick: `${balancedTree(taxa.map(({ id }) => id))};` };
}

function marksOf(view: LineageView, layout: PlateLayout): Mark[] {
  const data = plateData(view.lineage, view.trait, view.language);
  const words = plateWords(view, data, layout, new Map());
  return composePlate({ data, layout, words, anchors: new Map(), slices: [] }).marks;
}

/** Boxes of the names that stand on the plate at all times; letters of the italic face are 0.44 of their size wide. */
function namesOf(marks: readonly Mark[]): Box[] {
  return marks.flatMap(({ role, layer, shape }) => {
    if (role !== 'taxon-name' || layer !== 'labels' || shape.kind !== 'text') return [];
    const { x, y, size, anchor, runs } = shape;
    const width = runs[0]!.text.length * size * 0.44;
    const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
    return { left, right: left + width, top: y - size * 0.72, bottom: y + size * 0.24 };
  });
}

/** The least that must stand: all of 24 and 60% of 40 on the wide plate, 12 of 200 on a phone. */
const demands = [
  { count: 24, layout: wide, least: 24 },
  { count: 40, layout: wide, least: 24 },
  { count: 200, layout: wide, least: 24 },
  { count: 200, layout: phone, least: 12 },
];

describe.each(demands)('of $count animals on the $layout.name plate', ({ count, layout, least }) => {
  let names: Box[];
  beforeAll(async () => {
    names = namesOf(marksOf(await viewOf(named(count)), layout));
  });

  test(`at least ${least} names stand`, () => {
    expect(names.length).toBeGreaterThanOrEqual(least);
  });

  test('no two names overlap', () => {
    names.forEach((box, index) =>
      names.slice(index + 1).forEach((other) => expect(overlap(box, other)).toBe(false)),
    );
  });

  test('every name stands inside the room for names', () => {
    for (const { left, right } of names) {
      expect(left).toBeGreaterThanOrEqual(layout.names.left);
      expect(right).toBeLessThanOrEqual(layout.names.right);
    }
  });
});

describe('a lineage that is hard', () => {
  const hard = (id: string) => viewOf(hardLineages.find((lineage) => lineage.id === id)!);

  test('with names of eighty letters has them cut on the plate, and none runs out of it', async () => {
    const view = await hard('long-names');
    expect(Math.min(...view.lineage.taxa.map(({ name }) => name.length))).toBe(80);
    const marks = marksOf(view, wide).filter(({ role }) => role === 'taxon-name');
    const names = marks.map(({ shape }) => (shape.kind === 'text' ? shape.runs[0]!.text : ''));
    expect(names).toHaveLength(6);
    for (const name of names) expect(name).toMatch(/^\p{L}+…$/u);
  });

  test('without any value has rings and no line of descent', async () => {
    const marks = marksOf(await hard('no-values'), wide);
    expect(marks.filter(({ role, layer }) => role === 'ring' && layer === 'marks')).toHaveLength(6);
    expect(marks.filter(({ layer }) => layer === 'branches')).toEqual([]);
  });

  test('of one animal has its mark and no line of descent', async () => {
    const marks = marksOf(await hard('one-animal'), wide);
    expect(marks.filter(({ role, layer }) => role === 'disc' && layer === 'marks')).toHaveLength(1);
    expect(marks.filter(({ layer }) => layer === 'branches')).toEqual([]);
  });

  test('that falls stands on the same axis as one that rises: mirrored values, mirrored places', async () => {
    const at = async (id: string) => {
      const marks = marksOf(await hard(id), wide);
      return marks.flatMap(({ role, layer, shape }) =>
        role === 'disc' && layer === 'marks' && shape.kind === 'circle' ? shape.x : [],
      );
    };
    const [rising, falling] = [await at('no-story'), await at('falling')];
    const middle = (wide.axis.zero * 62 + wide.axis.hundred * 38) / 100;
    expect(rising).toHaveLength(5);
    rising.forEach((x, index) => expect(x + falling[index]!).toBeCloseTo(2 * middle, 6));
  });

  test('in Arabic keeps digits in order and time upward', async () => {
    const view = await hard('right-to-left');
    expect(view.printed('six').printed).toMatch(/^\u2066.+\u2069$/u);
    const data = plateData(view.lineage, view.trait, 'ar');
    const plain = await hard('no-story');
    const ticks = (marks: readonly Mark[]) =>
      marks.flatMap(({ role, shape }) =>
        role === 'age-tick' && shape.kind === 'text' ? [[shape.x, shape.y]] : [],
      );
    expect(data.taxa).toHaveLength(6);
    expect(ticks(marksOf(view, wide))).toEqual(ticks(marksOf(plain, wide)));
    expect(ticks(marksOf(view, wide)).length).toBeGreaterThan(3);
  });
});
