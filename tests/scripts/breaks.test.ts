import { describe, expect, it } from 'vitest';
import { added, compileChanged, replaced, type Change } from './fixtures/changed-lineage.ts';

const broken = '- id: hm-10\n  taxon: collina-media\n  horizon: gorse-clay\n';

async function mediaWith(more: string, changes: Record<string, Change> = {}) {
  const { compiled, findings } = await compileChanged({ 'specimens.yaml': added(broken + more), ...changes });
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  return compiled!.traits[0]!.values.find((value) => value.taxon === 'collina-media')!;
}

const callipers = (part: string, whole: string, more = '') =>
  `  lost: [{ landmark: snout-tip${more} }]\n  measurements:\n    muzzle-length: { value: ${part}, unit: mm, toBreak: snout-tip }\n    skull-length: { value: ${whole}, unit: mm, toBreak: snout-tip }\n`;

/*
 * With x restored beyond the break a share reads (a + x)/(b + x): for a < b it rises from a/b towards 1, for a > b it
 * falls towards 1. Elementary algebra, no source.
 */
describe('a broken specimen', () => {
  it('whose share is below the whole is a floor just under a/b, and never prints the far end', async () => {
    const value = await mediaWith(callipers('20', '60'));
    expect(value.status).toBe('bounded');
    expect(value.estimate).toBeNull();
    const floor = value.limits!.atLeast!;
    expect(floor).toBeLessThanOrEqual((100 * 20) / 60);
    expect(floor).toBeGreaterThan((100 * 20) / 60 - 1.5);
    expect(value.limits!.atMost).toBeUndefined();
    expect(value.limits!.asymptote).toBe(100);
    expect(value.interval).toEqual([floor, null]);
  });

  it('whose share is above the whole is a ceiling', async () => {
    const value = await mediaWith(callipers('70', '60'));
    expect(value.limits!.atMost).toBeGreaterThanOrEqual((100 * 70) / 60);
    expect(value.interval[0]).toBeNull();
  });

  it('that can have lost only so much has both ends', async () => {
    const value = await mediaWith(callipers('20', '60', ', atMost: 10'));
    expect(value.limits!.atLeast).toBeLessThanOrEqual((100 * 20) / 60);
    expect(value.limits!.atMost).toBeGreaterThanOrEqual((100 * 30) / 70);
    expect(value.limits!.asymptote).toBeUndefined();
  });

  it('shows its working: what is preserved, and what it would read with more restored', async () => {
    const { working } = (await mediaWith(callipers('20', '60'))).limits!;
    expect(working!.part).toEqual({ measurement: 'muzzle-length', mm: 20 });
    expect(working!.whole).toEqual({ measurement: 'skull-length', mm: 60 });
    for (const { lostMm, value } of working!.rows)
      expect(value).toBeCloseTo((100 * (20 + lostMm)) / (60 + lostMm), 9);
  });

  it('digitised at several points of its break is held to the weakest of them', async () => {
    const sheet =
      'specimen,landmark,x,y\nhm-10,eye-front,100,0\nhm-10,skull-rear,300,0\nhm-10,tooth-front,120,40\nhm-10,tooth-rear,200,40\n';
    const lost =
      '  lost: [{ landmark: snout-tip, break: [[40, 0], [20, 5]] }]\n  landmarks: { view: left, sheet: sheets/broken.csv, mmPerUnit: 1 }\n';
    const value = await mediaWith(lost, { 'sheets/broken.csv': sheet });
    expect(value.limits!.working!.rows[0]!.value).toBeCloseTo((100 * 60) / 260, 9);
    expect(value.limits!.atLeast).toBeLessThanOrEqual((100 * 60) / 260);
  });

  it('leaves a measured taxon measured, and its limit stands beside', async () => {
    const lost = callipers('20', '60').replaceAll('\n  ', '\n  ');
    const changes = {
      'specimens.yaml': added(`- id: hm-10\n  taxon: collina-nana\n  horizon: gorse-clay\n${lost}`),
    };
    const { compiled } = await compileChanged(changes);
    const value = compiled!.traits[0]!.values.find(({ taxon }) => taxon === 'collina-nana')!;
    expect(value.status).toBe('measured');
    expect(value.limits!.specimen).toBe('hm-10');
  });

  it('that is a juvenile limits nothing', async () => {
    const value = await mediaWith(`  lifeStage: juvenile\n${callipers('20', '60')}`);
    expect(value.status).toBe('inferred');
    expect(value.limits).toBeUndefined();
  });

  it('lowers no estimate: the floor is kept by relatives and limit together', async () => {
    const alone = (await compileChanged()).compiled!.traits[0]!.values.find(
      ({ taxon }) => taxon === 'collina-media',
    )!;
    const together = await mediaWith(callipers('25', '60'));
    expect(together.conditional!.median).toBeGreaterThan(alone.estimate!);
  });
});

describe('an axis', () => {
  it('by its substitute, turned back by its angle, gives the length that the main one gives', async () => {
    // The tooth row lies level; the substitute runs from snout tip to skull rear, 5 degrees clockwise of it.
    const drop = (300 * Math.tan((5 * Math.PI) / 180)).toFixed(6);
    const row = (id: string, teeth: boolean) =>
      `${id},snout-tip,0,0\n${id},eye-front,100,-30\n${id},skull-rear,300,${drop}\n` +
      (teeth ? `${id},tooth-front,50,20\n${id},tooth-rear,150,20\n` : '');
    const sheet = `specimen,landmark,x,y\n${row('s-1', true)}${row('s-2', false)}`;
    const record = (id: string) =>
      `- { id: ${id}, taxon: collina-media, horizon: gorse-clay, landmarks: { view: left, sheet: sheets/two.csv, mmPerUnit: 1 } }\n`;
    const { compiled } = await compileChanged({
      'scheme.yaml': replaced('turned: 0', 'turned: 5'),
      'specimens.yaml': added(record('s-1') + record('s-2')),
      'sheets/two.csv': sheet,
    });
    const [one, other] = ['s-1', 's-2'].map(
      (id) => compiled!.specimens.find((each) => each.id === id)!.values[0]!,
    );
    expect(one!.part!.mm).toBeCloseTo(100, 9);
    expect(other!.part!.mm).toBeCloseTo(one!.part!.mm, 6);
    expect(other!.value).toBeCloseTo(one!.value, 6);
  });
});

describe('a break that can give no limit is a finding', () => {
  async function refusals(specimens: string, changes: Record<string, Change> = {}): Promise<string[]> {
    const { findings } = await compileChanged({ 'specimens.yaml': added(broken + specimens), ...changes });
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    return findings.filter(({ code }) => code === 'limit-refused').map(({ message }) => message);
  }

  it('where more than one landmark of the trait is lost', async () => {
    expect(await refusals('  lost: [{ landmark: snout-tip }, { landmark: skull-rear }]\n')).toEqual([
      'the break gives no limit for "muzzle-share": more than one of its landmarks is lost',
    ]);
  });

  it('where the trait is an angle', async () => {
    const angle = [
      '- id: face-angle',
      '  label: { en: Face angle }',
      '  meaning: { en: angle of the face at the eye }',
      '  angle: face-angle',
    ].join('\n');
    const found = await refusals('  lost: [{ landmark: tooth-front }]\n', {
      'traits.yaml': added(`${angle}\n`),
      'scheme.yaml': added('  - { id: face-angle, angle: [tooth-front, eye-front, skull-rear] }\n'),
    });
    expect(found).toEqual([
      'the break gives no limit for "face-angle": an angle or a count does not simply grow with the length that is lost',
    ]);
  });
});
