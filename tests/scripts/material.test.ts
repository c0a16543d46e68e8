import { expect, test } from 'vitest';
import { compileChanged, findingsAfter, replaced } from './fixtures/changed-lineage.ts';

const states = 'states: [{ id: no, label: { en: no } }, { id: yes, label: { en: yes } }]';
const ridge = `- id: ear-ridge
  label: { en: ear ridge }
  ${states}
  scored: { no: [saltula-prima, collina-nana], yes: [collina-longa, collina-vivens] }
`;
const flap = (softPart: string, scored = '{ no: [saltula-brevis], yes: [collina-vivens] }') => `- id: ear-flap
  label: { en: ear flap }
  ${states}
  scored: ${scored}
  softPart: ${softPart}
`;
const sign = '{ state: yes, sign: { character: ear-ridge, state: yes } }';
/** The outgroup lives as well, so that fossils have living relatives on both sides. */
const twoLiving = {
  'taxa.yaml': (text: string) => text.replace(/(- \{ id: saltula-brevis,)/, '$1 living: true,'),
};
const elements = `elements:
  - { id: cranium, name: { en: skull }, share: 3, source: hopper-notes }
  - { id: mandible, name: { en: jaw }, share: 1, source: hopper-notes }
`;

async function softPartOf(characters: string) {
  const { compiled, findings } = await compileChanged({ ...twoLiving, 'characters.yaml': characters });
  if (!compiled) throw new Error(findings.map(({ message }) => message).join('\n'));
  return compiled.characters!.find(({ id }) => id === 'ear-flap')!.softPart!;
}

test('living relatives on both sides that differ make a level II, with a prime where bone bears no mark', async () => {
  const { brackets } = await softPartOf(ridge + flap(sign));
  const of = (taxon: string) => brackets.find((each) => each.taxon === taxon)!;
  expect(of('collina-longa')).toMatchObject({
    sides: [
      { living: ['collina-vivens'], has: true },
      { living: ['saltula-brevis'], has: false },
    ],
    sign: true,
    readings: [{ level: 'II', prime: false, verdict: 'equivocal' }],
  });
  expect(of('collina-nana').readings).toEqual([{ level: 'II', prime: true, verdict: 'equivocal' }]);
  // not scored for the mark: both are open
  expect(of('collina-media').readings.map(({ level, prime }) => [level, prime])).toEqual([
    ['II', false],
    ['II', true],
  ]);
  expect(brackets.map(({ taxon }) => taxon)).not.toContain('collina-vivens');
});

test('a living relative of which it is not known leaves two levels open', async () => {
  const { brackets } = await softPartOf(
    ridge + flap('{ state: yes }', '{ no: [saltula-prima], yes: [collina-vivens] }'),
  );
  const { readings, sign: mark } = brackets.find(({ taxon }) => taxon === 'collina-longa')!;
  expect(readings.map(({ level }) => level)).toEqual(['I', 'II']);
  expect(mark).toBeNull();
  // it shows the state itself, so nothing needs to bracket it
  expect(brackets.map(({ taxon }) => taxon)).not.toContain('saltula-prima');
});

test('one living relative brackets nothing', async () => {
  const { compiled } = await compileChanged({ 'characters.yaml': ridge + flap(sign) });
  for (const { sides, readings } of compiled!.characters![1]!.softPart!.brackets) {
    expect(sides.length).toBeLessThan(2);
    expect(readings).toEqual([]);
  }
});

test('a state or a mark that is not there is told', async () => {
  const wrong = ridge + flap('{ state: yess, sign: { character: ear-rigde, state: yes } }');
  expect(await findingsAfter({ 'characters.yaml': wrong })).toMatchInlineSnapshot(`
    "characters.yaml:9:22-26 error unknown-id
      unknown state: "yess"; did you mean "yes"?
      name one of: no, yes
    characters.yaml:9:47-56 error unknown-id
      unknown character of bones: "ear-rigde"; did you mean "ear-ridge"?
      name one of: ear-ridge"
  `);
});

test('an element that lies within none, twice or without a source is told', async () => {
  const wrong = `${elements}  - { id: mandible, name: { en: jaw }, share: 1, within: craniun, source: nobody }\n`;
  expect(await findingsAfter({ 'scheme.yaml': (text) => text + wrong })).toMatchInlineSnapshot(`
    "scheme.yaml:19:11-19 error duplicate-id
      the id "mandible" is given twice in elements
      give one of the two another id, or remove it
    scheme.yaml:19:58-65 error unknown-id
      unknown element: "craniun"; did you mean "cranium"?
      name an element of this list that is no part itself
    scheme.yaml:19:75-81 error unknown-reference
      unknown reference: "nobody"
      name one of references.bib, or add it there"
  `);
});

test('completeness counts bones by their share and features by how many are told, and a doubtful specimen not at all', async () => {
  const { compiled } = await compileChanged({
    'characters.yaml': ridge + flap(sign),
    'scheme.yaml': (text) => text + elements,
    'specimens.yaml': (text) =>
      replaced(
        'catalogNumber: "2"\n',
        'catalogNumber: "2"\n  identification: { qualifier: cf. }\n  elements: [{ element: cranium }]\n',
      )(
        replaced(
          'catalogNumber: "3"\n',
          'catalogNumber: "3"\n  elements: [{ element: cranium, preserved: 0.5 }, { element: mandible, side: left }]\n',
        )(text),
      ),
  });
  const { taxa, characters, elements: listed } = compiled!.completeness!;
  expect(listed.map(({ share }) => share)).toEqual([75, 25]);
  expect(characters).toBe(1);
  const own = taxa.find(({ taxon }) => taxon === 'saltula-brevis')!;
  expect(own).toMatchObject({ specimens: 1, best: 50, together: 50, scored: 0, scoredPercent: 0 });
  expect(taxa.find(({ taxon }) => taxon === 'saltula-prima')).toMatchObject({
    specimens: 0,
    best: null,
    scored: 1,
    scoredPercent: 100,
  });
});

test('a feature of bones has its indices and the likeliest rate on the reference tree', async () => {
  const { compiled } = await compileChanged({ 'characters.yaml': ridge });
  expect(compiled!.matrixFit).toEqual({
    characters: 1,
    steps: 1,
    minimum: 1,
    maximum: 2,
    consistency: 1,
    retention: 1,
  });
  const { fit, rate, steps } = compiled!.characters![0]!;
  expect(steps).toBe(1);
  expect(fit).toEqual({ minimum: 1, maximum: 2, consistency: 1, retention: 1 });
  expect(rate!.perMyr).toBeGreaterThan(0);
  for (const { shares } of rate!.forks) expect(shares.reduce((sum, share) => sum + share)).toBeCloseTo(1, 11);
});
