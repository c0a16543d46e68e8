import { mkdir, mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { normalDraw, seededRandom } from '../../analysis/random/index.ts';

/** Writes an invented lineage of so many taxa and specimens to a new folder and returns its path: callipers in one table, a record each. */
export async function writeLargeLineage(taxa: number, specimens: number): Promise<string> {
  const folder = join(await mkdtemp(join(tmpdir(), 'large-')), 'large');
  await mkdir(join(folder, 'sheets'), { recursive: true });
  const random = seededRandom('large lineage', taxa, specimens);
  const taxonIds = Array.from({ length: taxa }, (_, index) => `taxon-${index}`);
  const rows = Array.from({ length: specimens }, (_, index) => {
    const whole = 60 + 3 * normalDraw(random);
    return `s-${index},${(whole * (0.3 + 0.01 * normalDraw(random))).toFixed(2)},${whole.toFixed(2)}`;
  });
  const records = rows.map(
    (_, index) =>
      `- id: s-${index}\n  taxon: taxon-${index % taxa}\n  institutionCode: LM\n  catalogNumber: "${index}"\n  lifeStage: adult\n  horizon: bed\n`,
  );
  const files: Record<string, string> = {
    'lineage.yaml': `title: { en: Large }\nquestion: { en: How long? }\ninvented: true\nlanguages: [en]\nfocus: share\nlicence: CC0-1.0\neditions: [{ number: 1, date: 2026-11-25, status: draft }]\ntrees: [{ id: main, newick: "${balanced(taxonIds)}", dating: { method: equal-share, root: 90 } }]\n`,
    'scheme.yaml':
      'measurements: [{ id: part, definition: { en: part } }, { id: whole, definition: { en: whole } }]\n',
    'traits.yaml':
      '- { id: share, label: { en: Share }, meaning: { en: part of the whole }, ratio: { part: part, whole: whole }, scale: plain }\n',
    'horizons.yaml': '- { id: bed, formation: Bed, age: { from: 20, to: 10 } }\n',
    'taxa.yaml': taxonIds
      .map((id) => `- { id: ${id}, scientificName: Taxon ${id.replace('-', ' ')} }\n`)
      .join(''),
    'specimens.yaml': records.join(''),
    'sheets/callipers.csv': `specimen,part (mm),whole (mm)\n${rows.join('\n')}\n`,
  };
  for (const [file, text] of Object.entries(files)) await writeFile(join(folder, file), text);
  return folder;
}

/** Pairs of neighbours joined again and again: a balanced tree. */
function balanced(tips: readonly string[]): string {
  let level = [...tips];
  while (level.length > 1) {
    level = level.flatMap((one, index) =>
      index % 2 === 1 ? [] : level[index + 1] === undefined ? [one] : [`(${one},${level[index + 1]})`],
    );
  }
  return `${level[0]};`;
}
