import { describe, expect, it } from 'vitest';
import { added, compileChanged, replaced, type Change } from './fixtures/changed-lineage.ts';

async function digests(changes: Record<string, Change> = {}) {
  const { compiled, findings } = await compileChanged(changes);
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  return { content: compiled!.contentDigest, result: compiled!.resultDigest };
}

describe('the content digest', () => {
  it('is the same for other line ends, a byte order mark and decomposed letters', async () => {
    const accented: Record<string, Change> = { 'references.bib': replaced('Heath, Bo', 'Héath, Bo') };
    const saved: Record<string, Change> = {
      'references.bib': (text) =>
        `\uFEFF${text.replace('Heath, Bo', 'He\u0301ath, Bo').replaceAll('\n', '\r\n')}`,
      'taxa.yaml': (text) => text.replaceAll('\n', '\r\n'),
    };
    expect(await digests(saved)).toEqual(await digests(accented));
  });

  it('changes with any record, and not with private.yaml', async () => {
    const before = await digests();
    const place =
      '- { specimen: hm-1, decimalLatitude: 51.2034, decimalLongitude: -2.5012, landowner: B. Heath }\n';
    expect((await digests({ 'private.yaml': place })).content).toBe(before.content);
    expect((await digests({ 'taxa.yaml': added('# a remark\n') })).content).not.toBe(before.content);
  });
});

describe('the result digest', () => {
  it('stays when words change and moves when a measurement does', async () => {
    const before = await digests();
    const words = await digests({
      'lineage.yaml': replaced('title: { en: Hill-hoppers }', 'title: { en: Hoppers }'),
    });
    const numbers = await digests({ 'sheets/callipers.csv': replaced('hm-5,29.4', 'hm-5,29.5') });
    expect(words.result).toBe(before.result);
    expect(words.content).not.toBe(before.content);
    expect(numbers.result).not.toBe(before.result);
  });
});

describe('a compiled lineage', () => {
  it('is the same to the byte when it is compiled again', async () => {
    const [one, other] = [await compileChanged(), await compileChanged()];
    expect(JSON.stringify(one.compiled)).toBe(JSON.stringify(other.compiled));
  });

  it('holds nothing of private.yaml', async () => {
    const { compiled } = await compileChanged({
      'private.yaml':
        '- { specimen: hm-1, decimalLatitude: 51.2034, decimalLongitude: -2.5012, landowner: B. Heath }\n',
    });
    expect(JSON.stringify(compiled)).not.toMatch(/51\.2034|2\.5012|landowner/);
  });

  it('holds no number with more than twelve significant digits', async () => {
    const { compiled } = await compileChanged();
    for (const number of JSON.stringify(compiled).match(/-?\d+\.\d+(e[+-]?\d+)?/g)!) {
      expect(
        number
          .replace(/e.*/, '')
          .replace(/^-?0*\.?0*/, '')
          .replace('.', '').length,
      ).toBeLessThanOrEqual(12);
    }
  });
});
