import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compileChanged, replaced } from './fixtures/changed-lineage.ts';

/*
 * A real table of an open data package, read as a museum's own sheet: 344 rows, one animal each, with headers, names
 * and gaps of its own. Source: vega-datasets (npm), penguins.json; data of Gorman, Williams and Fraser 2014,
 * PLoS ONE 9: e90081, CC0.
 */
interface Row {
  Species: string;
  Sex: string | null;
  'Beak Length (mm)': number | null;
  'Flipper Length (mm)': number | null;
  'Body Mass (g)': number | null;
}
const rows = JSON.parse(
  readFileSync(new URL('../../node_modules/vega-datasets/data/penguins.json', import.meta.url), 'utf8'),
) as Row[];

const sheet = ['Kind,Sex,"Beak Length (mm)","Flipper Length (mm)","Body Mass (g)"']
  .concat(
    rows.map((row) =>
      [
        row.Species,
        row.Sex ?? '',
        row['Beak Length (mm)'] ?? '',
        row['Flipper Length (mm)'] ?? '',
        row['Body Mass (g)'] ?? '',
      ].join(','),
    ),
  )
  .join('\n');

const mapping = `
sheets:
  - file: sheets/birds.csv
    rows: specimens
    notMeasured: ["."]
    taxa: { Adelie: saltula-prima, Chinstrap: saltula-brevis, Gentoo: collina-nana }
    columns:
      Kind: taxon
      Sex: sex
      "Beak Length (mm)": { measurement: beak-length, unit: mm }
      "Flipper Length (mm)": { measurement: flipper-length, unit: mm }
      "Body Mass (g)": ignore
measurements:
  - { id: beak-length, definition: { en: length of the beak } }
  - { id: flipper-length, definition: { en: length of the flipper } }
`;

const changes = {
  'scheme.yaml': mapping,
  'sheets/birds.csv': sheet,
  'sheets/landmarks.csv': null,
  'sheets/callipers.csv': null,
  'specimens.yaml':
    '- { id: hm-5, taxon: collina-longa, horizon: gorse-clay }\n- { id: hm-8, taxon: collina-media, horizon: gorse-clay }\n- { id: hm-9, taxon: collina-dubia, horizon: upper-shelf }\n',
  'taxa.yaml': (text: string) =>
    text.replaceAll(/(Saltula \w+|Collina nana)(, role: outgroup)? \}/g, '$1, living: true }'),
  'traits.yaml': `- id: muzzle-share
  label: { en: Beak }
  meaning: { en: beak to flipper }
  ratio: { part: beak-length, whole: flipper-length, unit: percent }
  scale: plain
`,
};

describe('a museum’s own sheet', () => {
  it('gives one specimen a row, and the means that plain arithmetic on the table gives', async () => {
    const { compiled, findings } = await compileChanged(changes);
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(compiled!.specimens).toHaveLength(rows.length + 3);
    const values = compiled!.traits[0]!.values;
    for (const [species, taxon] of [
      ['Adelie', 'saltula-prima'],
      ['Chinstrap', 'saltula-brevis'],
      ['Gentoo', 'collina-nana'],
    ] as const) {
      const shares = rows.flatMap((row) => {
        const [beak, flipper] = [row['Beak Length (mm)'], row['Flipper Length (mm)']];
        return row.Species === species && beak !== null && flipper !== null ? (100 * beak) / flipper : [];
      });
      const value = values.find((each) => each.taxon === taxon)!;
      expect(value.n).toBe(shares.length);
      expect(value.estimate).toBeCloseTo(shares.reduce((sum, each) => sum + each, 0) / shares.length, 9);
    }
  });

  it('asks about the one odd word of the table instead of guessing', async () => {
    const { findings } = await compileChanged(changes);
    const odd = rows.filter(({ Sex }) => Sex !== null && !['MALE', 'FEMALE'].includes(Sex));
    expect(odd).toHaveLength(1);
    expect(odd[0]!.Sex).toBe('.');
    const without = { ...changes, 'scheme.yaml': replaced('    notMeasured: ["."]\n', '')(mapping) };
    const asked = (await compileChanged(without)).findings.filter(({ severity }) => severity === 'error');
    expect(asked.map(({ file, code, message }) => `${file} ${code} ${message}`)).toEqual([
      'sheets/birds.csv wrong-value unknown sex: "."',
    ]);
    expect(findings.some(({ code }) => code === 'wrong-value')).toBe(false);
  });

  it('asks about a kind of animal that the mapping does not name', async () => {
    const without = {
      ...changes,
      'scheme.yaml': replaced('Gentoo: collina-nana', 'Gentu: collina-nana')(mapping),
    };
    const { findings } = await compileChanged(without);
    expect(findings[0]!.message).toBe('unknown taxon: "Gentoo"; did you mean "Gentu"?');
  });
});
