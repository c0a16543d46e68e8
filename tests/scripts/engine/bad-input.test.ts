import { describe, expect, it } from 'vitest';
import { added, compileChanged, type Change } from '../fixtures/changed-lineage.ts';

/** Compiles, and holds what every answer must: no error, no number that is none, a status for each animal. */
async function compiled(changes: Record<string, Change>) {
  const { compiled: lineage, findings } = await compileChanged(changes);
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  expect(JSON.stringify(lineage)).not.toMatch(/NaN|Infinity/);
  for (const { values } of lineage!.traits)
    for (const { status, estimate, interval } of values) {
      expect(['measured', 'bounded', 'inferred', 'unknown']).toContain(status);
      if (status === 'unknown' || status === 'bounded') expect(estimate).toBeNull();
      if (status === 'inferred') expect([estimate, ...interval].every(Number.isFinite)).toBe(true);
    }
  const trait = lineage!.traits[0]!;
  const media = trait.values.find(({ taxon }) => taxon === 'collina-media')!;
  return { lineage: lineage!, trait, media, findings, codes: findings.map(({ code }) => code) };
}

/** Calliper readings in place of all sheets, one specimen an animal; animals without a reading have a specimen too. */
const measured = (shares: Record<string, number>, more = ''): Record<string, Change> => ({
  'specimens.yaml':
    Object.keys(beds)
      .map((taxon, index) => `- { id: hm-${index + 1}, taxon: ${taxon}, horizon: ${beds[taxon]} }\n`)
      .join('') + more,
  'sheets/landmarks.csv': null,
  'sheets/callipers.csv':
    'specimen,muzzle-length (mm),skull-length (mm)\n' +
    Object.keys(beds)
      .flatMap((taxon, index) => (taxon in shares ? `hm-${index + 1},${shares[taxon]},100\n` : []))
      .join(''),
});
const beds: Record<string, string> = {
  'saltula-prima': 'lower-shelf',
  'saltula-brevis': 'upper-shelf',
  'collina-nana': 'gorse-clay',
  'collina-longa': 'gorse-clay',
  'collina-vivens': 'gorse-clay',
  'collina-media': 'gorse-clay',
  'collina-dubia': 'upper-shelf',
};
const five = {
  'saltula-prima': 30,
  'saltula-brevis': 32,
  'collina-nana': 35,
  'collina-longa': 41,
  'collina-vivens': 44,
};

describe('bad input', () => {
  it('of fewer than four measured animals is a finding, and the rest stay unknown', async () => {
    const { 'collina-longa': _longa, 'collina-vivens': _vivens, ...three } = five;
    const { media, codes, findings, trait } = await compiled(measured(three));
    expect(codes).toContain('cannot-estimate');
    expect(findings.find(({ code }) => code === 'cannot-estimate')!.message).toContain('fewer than four');
    expect(media).toMatchObject({ status: 'unknown', reason: 'fewer-than-four' });
    expect(trait.model).toBeNull();
  });

  it('of exact values that are all equal is a finding, and the rest stay unknown', async () => {
    const equal = Object.fromEntries(Object.keys(five).map((taxon) => [taxon, 33]));
    const { media, codes, findings } = await compiled(measured(equal));
    expect(codes).toContain('cannot-estimate');
    expect(findings.find(({ code }) => code === 'cannot-estimate')!.message).toContain('the same');
    expect(media).toMatchObject({ status: 'unknown', reason: 'not-estimated' });
  });

  it('of values that are all error is a finding, and nothing is made of their differences', async () => {
    const shares = { ...five };
    for (const taxon of Object.keys(five))
      shares[taxon as keyof typeof five] = 33 + (taxon.length % 2) * 0.01;
    const noisy = measured(shares, '- { id: hm-21, taxon: collina-nana, horizon: gorse-clay }\n');
    const { codes, trait } = await compiled({
      ...noisy,
      'sheets/callipers.csv': `${noisy['sheets/callipers.csv'] as string}hm-21,53,100\n`,
    });
    expect(codes).toContain('rate-at-zero');
    expect(trait.model!.compared[0]).toMatchObject({ name: 'brownian', note: 'rate-at-zero' });
  });

  it('of a pair of near relatives far apart gives a high rate, not an endless one', async () => {
    const { trait } = await compiled({
      ...measured({ ...five, 'collina-longa': 2, 'collina-vivens': 95 }),
      'lineage.yaml': (text) =>
        text.replace('(collina-longa,collina-vivens)', '(collina-longa,collina-vivens)'),
    });
    expect(trait.model!.rateMedian).toBeGreaterThan(0);
    expect(Number.isFinite(trait.model!.rateMedian)).toBe(true);
  });

  it('of a tree of one tip is an error at the tree, and nothing is compiled', async () => {
    const { compiled: lineage, findings } = await compileChanged({
      ...measured(five),
      'lineage.yaml': (text) => text.replace(/newick: ".*"/, 'newick: "saltula-prima;"'),
    });
    expect(lineage).toBeUndefined();
    expect(findings.find(({ severity }) => severity === 'error')).toMatchObject({
      code: 'tree-shape',
      file: 'lineage.yaml',
    });
  });

  it('of two exact tips at distance zero is a finding that names both', async () => {
    const { findings, media } = await compiled({
      ...measured(five),
      'lineage.yaml': (text) =>
        text
          .replace(
            /newick: ".*"/,
            'newick: "((saltula-prima:2,saltula-brevis:6.5):5,((collina-nana:0,collina-media:1):10,(collina-longa:0,collina-vivens:0):11):14);"',
          )
          .replace('dating: { method: equal-share, root: 40 }', 'dating: { method: given, root: 40 }'),
      'horizons.yaml': (text) =>
        text
          .replace('{ stage: Langhian }', '{ from: 30, to: 1 }')
          .replace('{ from: 34.0, to: 32.0 }', '{ from: 40, to: 20 }')
          .replace('{ date: 28.50, plusMinus: 0.20, sigma: 2 }', '{ from: 39, to: 20 }'),
      'taxa.yaml': (text) => text.replace('living: true, ', ''),
    });
    const told = findings.find(({ code }) => code === 'cannot-estimate')!;
    expect(told.message).toMatch(/"collina-longa"/);
    expect(told.message).toMatch(/"collina-vivens"/);
    expect(media.status).toBe('unknown');
  });

  it('of a limit that its relatives find very improbable is a finding, and the bone stands', async () => {
    const limit = (taxon: string, id: string) =>
      `- id: ${id}\n  taxon: ${taxon}\n  horizon: gorse-clay\n  lost: [{ landmark: snout-tip }]\n  measurements:\n    muzzle-length: { value: 97, unit: mm, toBreak: snout-tip }\n    skull-length: { value: 100, unit: mm, toBreak: snout-tip }\n`;
    const { codes, media } = await compiled(measured(five, limit('collina-media', 'hm-20')));
    expect(codes).toContain('limit-improbable');
    expect(media.status).toBe('bounded');
    expect(media.limits!.probability).toBeLessThan(0.001);
  });
});

describe('readings of one specimen by callipers and by landmarks', () => {
  const both = (muzzle: number): Record<string, Change> => ({
    'sheets/callipers.csv': added(`hm-3,${muzzle},60\n`),
    'sheets/landmarks.csv': added('hm-3,3,1,0,206,-60,601,-11,80,21,280,21\n'),
  });

  it('agree in silence where they agree, and are a finding with both where they do not', async () => {
    expect((await compiled(both(20.6))).codes).not.toContain('readings-disagree');
    const { findings } = await compiled(both(29));
    const told = findings.find(({ code }) => code === 'readings-disagree')!;
    expect(told.message).toContain('29.00 by callipers');
    expect(told.message).toContain('20.57 from landmarks');
  });
});
