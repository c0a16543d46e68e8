import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { compileLineage } from '../../scripts/compile/index.ts';
import { added, compileChanged, replaced, type Change } from './fixtures/changed-lineage.ts';

const { compiled } = await compileLineage(
  fileURLToPath(new URL('../../content/reed-trunks', import.meta.url)),
);
const nasal = compiled!.traits[0]!.size!;

test('both lengths of a share stand against the size that the trait declares', () => {
  expect(nasal.measurement).toBe('condylobasal-length');
  expect(nasal.parts.map(({ measurement }) => measurement)).toEqual(['naris-length', 'preorbital-length']);
});

test('the difference of the slopes of both lengths is the slope of the logarithm of their share', () => {
  // an identity of logarithms: ln(a/b) = ln a − ln b; here only the signs, for each length is fitted by itself
  const [part, whole] = nasal.parts.map(({ slope }) => slope!.perLog);
  expect(Math.sign(part! - whole!)).toBe(Math.sign(nasal.trait.slope!.perLog));
});

test('the pace of a length is told where its range leaves 1 out', () => {
  for (const { pace, slope } of nasal.parts) {
    const [low, high] = slope!.interval as [number, number];
    expect(pace).toBe(low > 1 ? 'faster' : high < 1 ? 'slower' : 'cannot-tell');
  }
});

test('an animal without a size is named, and never drawn', () => {
  expect(nasal.sizeless).toEqual(['riparhina-dura']);
  expect(nasal.trait.points.map(({ taxon }) => taxon)).not.toContain('riparhina-dura');
});

test('a trait that declares no size is set against none', () => {
  expect(compiled!.traits[1]!.size).toBeUndefined();
});

const sizeAfter = async (changes: Record<string, Change>) => {
  const { compiled: small, findings } = await compileChanged({
    'traits.yaml': replaced('scale: plain', 'scale: plain\n  size: skull-length'),
    ...changes,
  });
  if (!small) throw new Error(findings.map(({ message }) => message).join('\n'));
  return small.traits[0]!.size!;
};

test('a length that is the size itself is said to be so, and has no slope', async () => {
  const { parts } = await sizeAfter({});
  expect(parts[1]).toMatchObject({ measurement: 'skull-length', reason: 'is-the-size', pace: 'cannot-tell' });
  expect(parts[1]!.slope).toBeUndefined();
  expect(parts[0]!.slope).toBeDefined();
});

test('animals of one size tell nothing of size, with the reason', async () => {
  const ids = ['hm-1', 'hm-3', 'hm-4', 'hm-5', 'hm-6'];
  const size = await sizeAfter({
    'specimens.yaml': (text) => text.replaceAll(/  (measurements|landmarks):[\s\S]*?(?=- id:)/g, ''),
    'sheets/callipers.csv': `specimen,muzzle-length (mm),skull-length (mm)\n${ids.map((id, k) => `${id},${20 + k},60`).join('\n')}\n`,
  });
  expect(size).toMatchObject({ verdict: 'cannot-tell', reason: 'predictor-does-not-vary' });
});

test('fewer than four animals with a size tell nothing, with the reason', async () => {
  const size = await sizeAfter({
    'sheets/callipers.csv': (text) => text.replace('hm-5,29.4,70.2\n', '').replace('hm-6,34.1,80.3\n', ''),
  });
  expect(size).toMatchObject({ verdict: 'cannot-tell', reason: 'fewer-than-four' });
});

test('animals that grow alike in every part keep the pace of size', async () => {
  // common practice, no source: a length that is a fixed share of size has a slope of 1 on logarithms (isometry)
  const ids = ['hm-1', 'hm-3', 'hm-4', 'hm-5', 'hm-6'];
  const noise = [1.01, 0.99, 1.02, 0.98, 1];
  const size = await sizeAfter({
    'specimens.yaml': (text) => text.replaceAll(/  (measurements|landmarks):[\s\S]*?(?=- id:)/g, ''),
    'sheets/callipers.csv': `specimen,muzzle-length (mm),skull-length (mm)\n${ids
      .map((id, k) => `${id},${(0.4 * (40 + 25 * k) * noise[k]!).toFixed(3)},${40 + 25 * k}`)
      .join('\n')}\n`,
  });
  expect(size.parts[0]!.slope!.perLog).toBeCloseTo(1, 1);
  expect(size.parts[0]!.pace).toBe('cannot-tell');
  expect(size.verdict).toBe('cannot-tell');
});

test('an unknown size is an error at the record', async () => {
  const { findings } = await compileChanged({ 'traits.yaml': added('  size: no-such-length\n') });
  expect(
    findings.some(({ code, message }) => code === 'unknown-id' && message.includes('no-such-length')),
  ).toBe(true);
});

test('a trait and both its lengths have a slope on every tree and rule of dating, the reference first', () => {
  for (const { rows, slope } of [nasal.trait, ...nasal.parts]) {
    expect(rows.map(({ tree, dating }) => [tree, dating])).toEqual([
      ['main', 'equal-share'],
      ['main', 'minimum-branch'],
      ['rival', 'equal-share'],
      ['rival', 'minimum-branch'],
    ]);
    expect(rows[0]!.slope).toEqual(slope);
  }
});

/** Shares that rise with size over a star, and fall with it inside its close pairs. */
const shares = [20, 21.5, 26, 25.6, 30];
const lengths = [40, 60, 80, 120, 160];
const taxa = ['saltula-prima', 'saltula-brevis', 'collina-nana', 'collina-longa', 'collina-vivens'];
const [a, b, c, d, e] = taxa;
const star = `(${a}:7,${b}:11.5,${c}:25,${d}:25,${e}:40);`;
const pairs = `((${a}:0.2,${b}:4.7):6.8,(${c}:0.02,${d}:0.02):24.98,${e}:40);`;
const sizeOn = (...newicks: readonly string[]) =>
  sizeAfter({
    'lineage.yaml': (text) =>
      text.replace(
        /trees:[\s\S]*?(?=editions:)/,
        `trees:\n${newicks.map((newick, k) => `  - { id: tree-${k}, newick: "${newick}", dating: given, source: hopper-notes }\n`).join('')}`,
      ),
    'specimens.yaml': (text) => text.replaceAll(/  (measurements|landmarks):[\s\S]*?(?=- id:)/g, ''),
    'sheets/callipers.csv': `specimen,muzzle-length (mm),skull-length (mm)\n${[
      'hm-1',
      'hm-3',
      'hm-4',
      'hm-5',
      'hm-6',
    ]
      .map((id, k) => `${id},${((shares[k]! * lengths[k]!) / 100).toFixed(2)},${lengths[k]}`)
      .join('\n')}\n`,
  });

test('larger animals have more only where every tree says so: one that leans the other way, and one cannot tell', async () => {
  const alone = await sizeOn(star);
  expect(alone).toMatchObject({ verdict: 'larger' });
  const both = await sizeOn(star, pairs);
  expect(both.trait.slope).toEqual(alone.trait.slope);
  expect(both.trait.rows.map(({ slope }) => Math.sign(slope!.perLog))).toEqual([1, -1]);
  expect(both).toMatchObject({ verdict: 'cannot-tell', reason: 'trees-disagree' });
});

test('a length outgrows the animal only where every tree says so', async () => {
  expect((await sizeOn(star)).parts[0]!.pace).toBe('faster');
  expect((await sizeOn(star, pairs)).parts[0]!.pace).toBe('cannot-tell');
});
