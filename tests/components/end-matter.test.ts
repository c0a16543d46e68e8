import { describe, expect, test } from 'vitest';
import { mindChangers, rockGaps } from '../../components/lineage/end-matter.ts';
import { lineageView } from '../../components/lineage/view.ts';
import type { CompiledLineage } from '../../scripts/compile/contract.ts';
import { composeEditions } from '../../scripts/compile/compose/compose-editions.ts';
import { risingTips } from './fixtures/hands.ts';
import { inventedLineage } from './fixtures/invented-lineage.ts';

const lineage = inventedLineage(risingTips);
const minds = (from: CompiledLineage, language = 'en') => mindChangers(lineageView(from, language));
const rocks = (from: CompiledLineage, language = 'en') => rockGaps(lineageView(from, language));

describe('what would change our minds', () => {
  test('names the broken and the faceless animal with what is printed of them', () => {
    const said = minds(lineage).join('\n');
    expect(said).toContain('A whole skull of Damia fracta would turn “at least 31” into a number.');
    expect(said).toMatch(/missing bones of Fora mira would replace \d+ \[\d+–\d+\]/);
  });

  test('speaks of other trees only where they move an end, outward to whole units', () => {
    expect(minds(lineage).join()).not.toContain('Another tree');
    const [trait] = lineage.traits;
    const values = trait!.values.map((value) =>
      value.status === 'inferred'
        ? {
            ...value,
            span: {
              middle: [40, 44] as [number, number],
              interval: [27.4, 58.2] as [number, number],
              over: { trees: 2, rules: 2, ageSets: 0 },
            },
          }
        : value,
    );
    const spanned = { ...lineage, traits: [{ ...trait!, values }] };
    expect(minds(spanned).join()).toContain('Fora mira then reach 27–59');
  });

  test('counts the animals of which nothing is known', () => {
    const more = inventedLineage([...risingTips, { id: 'nothing', name: 'Ixa obscura', from: 40, to: 38 }]);
    expect(minds(more).at(-1)).toMatch(/^Of one animal nothing is known/);
  });
});

describe('what the rocks leave out', () => {
  test('counts beds, specimens and animals without a measured value, and says that a last find is no end', () => {
    const said = rocks(lineage);
    expect(said[0]).toBe('All of this rests on 0 specimens from 0 beds.');
    expect(said.join()).toContain('2 of 12 animals are known without a measured value');
    expect(said.at(-1)).toMatch(/last find is not the end/);
  });

  test('tells the longest silence, with whose line it is', () => {
    const ghosts = [
      { node: 'a', taxon: 'trunk', fromMa: 23, toMa: 0 },
      { node: 'b', taxon: 'wide', fromMa: 36, toMa: 34 },
    ];
    expect(rocks({ ...lineage, ghosts }).join()).toContain(
      '23.0 million years, from 23.0 million years ago to today: the line of Hula vivax',
    );
  });

  test.each(['en', 'es', 'ar'])('leaves no place of a sentence open in %s', (language) => {
    for (const sentence of [...minds(lineage, language), ...rocks(lineage, language)])
      expect(sentence).not.toMatch(/[{}]|undefined/);
  });
});

test('editions come newest first, with what changed in the author’s words', () => {
  const composed = composeEditions([
    { number: 1, date: '2026-01-01', status: 'draft', changes: [{ reason: 'first', en: 'First.' }] },
    { number: 2, date: '2026-02-01', status: 'signed' },
  ]);
  expect(composed.map(({ number }) => number)).toEqual([2, 1]);
  expect(composed[1]!.changes).toEqual([{ reason: 'first', text: { en: 'First.' } }]);
});
