import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import en from '../../../components/messages/en.json' with { type: 'json' };
import { voiceOf } from '../../../components/messages/say.ts';
import { sayStatement } from '../../../components/messages/say-statement.ts';
import { compileLineage } from '../../../scripts/compile/index.ts';
import { added, compileChanged, replaced, type Change } from '../fixtures/changed-lineage.ts';

const folder = fileURLToPath(new URL('../../../content/reed-trunks', import.meta.url));
const { compiled } = await compileLineage(folder);
const statements = compiled!.traits.flatMap((trait) => trait.statements);

async function saidAfter(changes: Record<string, Change>) {
  const lineage = (await compileChanged(changes)).compiled!;
  return lineage.traits[0]!.statements;
}

describe('what is said of the bundled lineage', () => {
  it('has one statement of the value of every animal and trait, and one sentence of misses and of the model a trait', () => {
    for (const trait of compiled!.traits) {
      const of = (wanted: string) => trait.statements.filter(({ kind }) => kind === wanted);
      expect(of('value').map(({ taxon }) => taxon)).toEqual(trait.values.map(({ taxon }) => taxon));
      expect(of('left-out')).toHaveLength(1);
      expect(of('model')).toHaveLength(1);
      expect(of('unknown')).toHaveLength(trait.values.filter(({ status }) => status === 'unknown').length);
      expect(of('span').length).toBeGreaterThan(0);
    }
  });

  it('is free of language: every code is a message, every text an id or the name of a share or a unit', () => {
    const known = new Set(Object.keys(en));
    const ids = new Set(compiled!.specimens.map(({ id }) => id));
    for (const { code, args } of statements) {
      expect(known.has(code), code).toBe(true);
      for (const value of Object.values(args))
        if (typeof value === 'string')
          expect(ids.has(value) || known.has(`phrase.share.${value}`) || known.has(`unit.${value}`)).toBe(
            true,
          );
    }
  });

  it('comes out as a sentence in every language of the interface', () => {
    for (const language of ['en', 'es', 'ar'])
      for (const said of statements.filter(({ kind }) => kind !== 'place'))
        expect(sayStatement(said, voiceOf(language))).toMatch(/\S/);
  });

  it('prints numbers at the decimals that it names', () => {
    for (const { args } of statements)
      for (const [name, value] of Object.entries(args))
        if (typeof value === 'number' && args['decimals'] !== undefined)
          expect(Number(value.toFixed(Number(args[`${name}Decimals`] ?? args['decimals']))), name).toBe(
            value,
          );
  });

  it('says the error of one reading for all that was read again, in the unit that was read', () => {
    for (const { repeats, statements, unit } of compiled!.traits) {
      const said = statements.filter(({ kind }) => kind === 'repeats');
      expect(said.map(({ args }) => args['specimens'])).toEqual(repeats.map(({ specimens }) => specimens));
      expect(said[0]!.args['unit']).toBe(unit);
    }
    const [said] = compiled!.traits[0]!.statements.filter(({ kind }) => kind === 'repeats');
    expect(sayStatement(said!, voiceOf('en'))).toBe(
      'Specimens whose landmarks were placed again: 24. The technical error of one reading is 0.24%. It makes up at most 0.01% of the variance among readings; the repeatability is 0.999 or more.',
    );
    expect(sayStatement(said!, voiceOf('es'))).toContain('0,24 %');
  });

  it('has a digest for each statement, which no other shares and another compile gives again', async () => {
    const digests = statements.map(({ digest }) => digest);
    expect(new Set(digests).size).toBe(digests.length);
    const again = await compileLineage(folder);
    expect(again.compiled!.traits.flatMap((trait) => trait.statements.map(({ digest }) => digest))).toEqual(
      digests,
    );
  });
});

describe('a digest', () => {
  it('stays where only a text changes, and moves where a printed number does', async () => {
    const before = await saidAfter({});
    const worded = await saidAfter({ 'traits.yaml': replaced('Muzzle share', 'Share of the muzzle') });
    expect(worded).toEqual(before);
    const measured = await saidAfter({ 'sheets/callipers.csv': replaced('29.4,70.2', '35.4,70.2') });
    const digestOf = (said: typeof before, taxon: string) =>
      said.find((each) => each.kind === 'value' && each.taxon === taxon)!.digest;
    expect(digestOf(measured, 'collina-longa')).not.toBe(digestOf(before, 'collina-longa'));
    expect(digestOf(measured, 'saltula-prima')).toBe(digestOf(before, 'saltula-prima'));
  });
});

describe('what is not known', () => {
  it.each([
    [
      'no tree',
      { 'lineage.yaml': (text: string) => text.replace(/trees:[\s\S]*?(?=editions)/, '') },
      'unknown.no-tree',
    ],
    [
      'too few measured relatives',
      { 'sheets/callipers.csv': (text: string) => text.replace(/hm-5.*\n/, '').replace(/hm-6.*\n/, '') },
      'unknown.fewer-than-four',
    ],
  ] satisfies [string, Record<string, Change>, string][])('says why: %s', async (_why, changes, code) => {
    const said = await saidAfter(changes);
    expect(said.find(({ kind, taxon }) => kind === 'unknown' && taxon === 'collina-media')!.code).toBe(code);
  });

  it('says of an animal outside the tree that it is outside', async () => {
    const said = await saidAfter({});
    expect(said.find(({ kind, taxon }) => kind === 'unknown' && taxon === 'collina-dubia')!.code).toBe(
      'unknown.not-in-tree',
    );
  });
});

describe('a limit that relatives find very improbable', () => {
  it('is a finding, is said with its chance, and limit and relatives both stand', async () => {
    const { compiled: lineage, findings } = await compileChanged({
      'specimens.yaml': added(
        '- id: hm-10\n  taxon: collina-media\n  horizon: gorse-clay\n  lost: [{ landmark: snout-tip }]\n  measurements:\n    muzzle-length: { value: 98, unit: mm, toBreak: snout-tip }\n    skull-length: { value: 100, unit: mm, toBreak: snout-tip }\n',
      ),
    });
    expect(findings.map(({ code }) => code)).toContain('limit-improbable');
    const trait = lineage!.traits[0]!;
    const value = trait.values.find(({ taxon }) => taxon === 'collina-media')!;
    expect(value.limits!.probability).toBeLessThan(0.001);
    expect(value.conditional!.interval.every((end) => Number.isFinite(end))).toBe(true);
    const said = trait.statements.find(({ kind, taxon }) => kind === 'limit' && taxon === 'collina-media')!;
    expect(said.code).toBe('limit.improbable');
    expect(said.args['specimen']).toBe('hm-10');
  });
});
