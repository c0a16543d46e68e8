import { describe, expect, it } from 'vitest';
import { added, findingsAfter, type Change } from '../fixtures/changed-lineage.ts';

/** Specimens of taxa of their own whose tooth row grows as the square of the skull: a line of slope one would be misled. */
function grown(rows: readonly (readonly [skull: number, teeth: number])[]): Record<string, Change> {
  const ids = rows.map((_, index) => `extra-${index}`);
  return {
    'taxa.yaml': added(
      ids.map((id) => `- { id: ${id}, scientificName: Extra ${id}, role: comparator }\n`).join(''),
    ),
    'specimens.yaml': added(
      ids.map((id) => `- { id: s-${id}, taxon: ${id}, horizon: gorse-clay }\n`).join(''),
    ),
    'sheets/grown.csv': `specimen,skull-length (mm),tooth-row-length (mm)\n${rows
      .map(([skull, teeth], index) => `s-extra-${index},${skull},${teeth}\n`)
      .join('')}`,
    'traits.yaml': added('  size: skull-length\n'),
  };
}

const slips = async (changes: Record<string, Change>) => {
  const findings = (await findingsAfter(changes)).split('\n');
  return findings.filter((_, index) => findings[index - (index % 3)]!.includes('unit-slip')).join('\n');
};
const square = [20, 30, 40, 60, 90, 140].map((skull): [number, number] => [skull, skull ** 2 / 100]);

describe('messages about unit slips', () => {
  it('are none where a length grows faster than the size', async () => {
    expect(await slips(grown(square))).toBe('');
  });

  it('a length of a lone specimen is off the size regression', async () => {
    expect(await slips(grown([...square, [100, 10]]))).toMatchInlineSnapshot(`
      "sheets/grown.csv:8:15-17 warning unit-slip
        "tooth-row-length" is 10 times smaller than its "skull-length" suggests
        centimetres and millimetres differ by 10: check the unit and the number"
    `);
  });

  it('a size that the other lengths contradict is told itself', async () => {
    const three = {
      'sheets/third.csv':
        'specimen,muzzle-length (mm)\n' + square.map((_, index) => `s-extra-${index},20\n`).join(''),
    };
    expect(
      await slips({
        ...grown(square.map(([skull, teeth], index) => [index === 2 ? skull * 25.4 : skull, teeth])),
        ...three,
      }),
    ).toMatchInlineSnapshot(`
      "sheets/grown.csv:4:11-15 warning unit-slip
        "skull-length" is 20 times larger than the other lengths of this specimen suggest
        inches and millimetres differ by 25.4: check the unit and the number"
    `);
  });

  it('the scale of a picture is off', async () => {
    expect(
      await slips({
        'specimens.yaml': (text) =>
          text.replace('taxon: collina-nana', 'taxon: saltula-prima').replace('mm: 10 }', 'mm: 100 }'),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:30:64-103 warning unit-slip
        "muzzle-length" from landmarks is 12 times larger than other specimens of "saltula-prima" suggest
        check the scale of the picture, and the unit of the sheet"
    `);
  });
});
