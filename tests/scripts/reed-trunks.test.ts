import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { compileLineage } from '../../scripts/compile/index.ts';

const folder = fileURLToPath(new URL('../../content/reed-trunks', import.meta.url));
const { compiled, findings } = await compileLineage(folder);

/** Taxon, first and last find in Ma, mean, half width of its 95% interval, and skulls, as the lineage was thought out. */
const measured: readonly (readonly [string, number, number, number, number, number])[] = [
  ['palustrina-communis', 0, 0, 9, 1, 8],
  ['palustrina-prior', 30, 27, 10, 2, 2],
  ['palustrina-lenta', 12, 10, 9, 2, 3],
  ['prorhina-vetusta', 52, 49.5, 14, 2, 3],
  ['prorhina-minor', 49, 46, 15, 2, 2],
  ['riparhina-dura', 47.1, 45, 22, 3, 1],
  ['riparhina-tenuis', 45.5, 43, 23, 2, 2],
  ['limnorhina-placida', 44, 42, 28, 2, 2],
  ['brevirhina-tarda', 36, 28, 29, 2, 2],
  ['brevirhina-curta', 30, 27, 26, 2, 2],
  ['brevirhina-humilis', 22, 19, 22, 2, 2],
  ['brevirhina-ultima', 14, 11, 21, 2, 2],
  ['calathorhina-ampla', 39.6, 38, 41, 2, 2],
  ['calathorhina-gemina', 38.5, 37, 42, 2, 2],
  ['meridorhina-lata', 33.9, 31, 53, 2, 2],
  ['meridorhina-alta', 29.8, 28.2, 60, 2, 3],
  ['meridorhina-extrema', 27, 25, 62, 2, 2],
  ['calamorhina-prisca', 23, 20.4, 78, 1, 5],
  ['calamorhina-lenta', 19, 17, 79, 2, 3],
  ['calamorhina-media', 15, 13, 89, 2, 4],
  ['calamorhina-vivax', 0, 0, 108, 1, 12],
];
const unmeasured: readonly (readonly [string, number, number])[] = [
  ['limnorhina-fracta', 43, 40.4],
  ['calathorhina-mira', 37.7, 35],
  ['ossorhina-obscura', 40, 38],
];

const requireLineage = () => {
  if (!compiled)
    throw new Error(`the lineage does not compile: ${findings.map(({ code }) => code).join(', ')}`);
  return compiled;
};
const requireTrait = (id: string) => requireLineage().traits.find((trait) => trait.id === id)!;
const nasalValue = (taxon: string) =>
  requireTrait('nasal-position').values.find((value) => value.taxon === taxon)!;
const halfWidth = ([low, high]: readonly (number | null)[]) => (high! - low!) / 2;

describe('the bundled lineage', () => {
  test('compiles, and warns of nothing but the animal that is in no tree', () => {
    expect(findings.map(({ code }) => code)).toEqual(['taxon-in-no-tree']);
    expect(requireLineage().about.invented).toBe(true);
  });

  test.each(measured)('measures %s from its skulls', (taxon, _first, _last, mean, error, skulls) => {
    const value = nasalValue(taxon);
    expect(value.status).toBe('measured');
    expect(value.n).toBe(skulls);
    expect(Math.round(value.estimate!)).toBe(mean);
    expect(Math.round(halfWidth(value.interval))).toBe(error);
  });

  const finds = [...measured, ...unmeasured].map(([taxon, first, last]) => [taxon, first, last] as const);

  test.each(finds)('finds %s in beds of its own time', (taxon, first, last) => {
    const found = requireLineage().taxa.find(({ id }) => id === taxon)!.finds;
    expect([found.first, found.last]).toEqual([expect.closeTo(first, 9), expect.closeTo(last, 9)]);
  });

  test('reads a lower limit and no upper one from the broken snout', () => {
    const { status, estimate, limits } = nasalValue('limnorhina-fracta');
    expect([status, estimate]).toEqual(['bounded', null]);
    expect(limits!.atMost).toBeUndefined();
    expect(limits!.atLeast).toBeGreaterThanOrEqual(31);
    expect(limits!.atLeast).toBeLessThan(32);
  });

  test('infers the face that was never found, and knows nothing of the animal of teeth alone', () => {
    expect(nasalValue('calathorhina-mira').status).toBe('inferred');
    expect(nasalValue('ossorhina-obscura')).toMatchObject({ status: 'unknown', estimate: null });
  });

  test('leaves out the young skull, the composite and the doubtful one, and says why', () => {
    const leftOut = requireTrait('nasal-position').values.flatMap((value) => value.leftOut);
    expect(leftOut).toEqual(
      expect.arrayContaining([
        { specimen: 'obm-0113', reason: 'young' },
        { specimen: 'obm-1350', reason: 'composite' },
        { specimen: 'wstc-25', reason: 'doubtful' },
      ]),
    );
    expect(leftOut).toHaveLength(3);
  });

  test('counts a cast once, in place of an original that was not measured', () => {
    expect(nasalValue('calamorhina-media').specimens).toContain('obm-1375');
    expect(nasalValue('calamorhina-media').specimens).not.toContain('lwrm-153');
  });

  test('limits the length of every skull that lacks one of its ends', () => {
    const values = requireTrait('condylobasal-length').values;
    const bounded = values.filter(({ status }) => status === 'bounded').map(({ taxon }) => taxon);
    expect(bounded.sort()).toEqual(['limnorhina-fracta', 'riparhina-dura']);
  });

  test('offers a second tree of the same animals in another order', () => {
    const [main, rival] = requireLineage().trees;
    const tips = (tree: typeof main) => tree!.nodes.flatMap(({ taxon }) => taxon ?? []).sort();
    expect(tips(rival)).toEqual(tips(main));
    expect([main!.reference, rival!.reference]).toEqual([true, false]);
  });
});

describe('what the story says in words', () => {
  test('is borne out by the records: the short noses come down with time', () => {
    const genus = ['tarda', 'curta', 'humilis', 'ultima'].map((name) => nasalValue(`brevirhina-${name}`));
    const places = genus.map(({ estimate }) => estimate!);
    const agesMa = genus.map(({ placedMa }) => placedMa!);
    expect(places).toEqual([...places].sort((one, other) => other - one));
    expect(agesMa).toEqual([...agesMa].sort((one, other) => other - one));
  });

  test('is borne out by the records: the brackets reach from a short nose to a long one', () => {
    const [low, high] = nasalValue('calathorhina-mira').interval;
    const near = (value: number, taxon: string) => Math.abs(value - nasalValue(taxon).estimate!);
    expect(near(low!, 'brevirhina-tarda')).toBeLessThan(5);
    expect(near(high!, 'meridorhina-lata')).toBeLessThan(5);
  });

  test('places the same components in the same order in both languages', async () => {
    const [english, spanish] = await Promise.all(['en', 'es'].map(readStory));
    const components = (text: string) => text.match(/<[A-Z][^>]*>/g)!;
    expect(components(spanish!)).toEqual(components(english!));
    expect(components(english!).filter((tag) => tag.startsWith('<Step'))).toHaveLength(9);
  });

  test.each([
    ['en', 25],
    ['es', 30],
  ] as const)('keeps sentences in "%s" to %i words', async (language, most) => {
    const lengths = sentences(await readStory(language)).map((sentence) => ({
      sentence,
      words: sentence.split(/\s+/).length,
    }));
    expect(lengths.filter(({ words }) => words > most)).toEqual([]);
  });
});

function readStory(language: string): Promise<string> {
  return readFile(`${folder}/story.${language}.mdx`, 'utf8');
}

/** Sentences of a story, with each component counted as one word. */
function sentences(story: string): string[] {
  const prose = story
    .split('\n')
    .filter((line) => !/^(#|<\/?(Step|Aside))/.test(line))
    .map((line) => line.replaceAll(/<[A-Z][^>]*\/>/g, 'X').replaceAll(/<[^>]+>|^- |\*\*/g, ''));
  return prose.flatMap((line) => line.split(/(?<=[.?!:])\s+/)).filter((sentence) => sentence.trim() !== '');
}
