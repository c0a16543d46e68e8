import { normalDraw, seededRandom } from '../../analysis/random/index.ts';
import { openReport } from '../../scripts/compile/findings/report.ts';
import type { LineageRecords } from '../../scripts/compile/read/lineage-records.ts';
import type { ResolvedLineage } from '../../scripts/compile/resolve/lineage.ts';
import { parseCsv } from '../../scripts/compile/source/csv-source.ts';
import { sourceText } from '../../scripts/compile/source/source-text.ts';
import type { Section, Trait } from '../../scripts/compile/schema/index.ts';

/** Records of an invented section whose mean wanders at random, with one worn crown in four; seeded. */
export function largeSection(
  levels: number,
  each: number,
  seed = 1,
): { records: LineageRecords; lineage: ResolvedLineage } {
  const report = openReport();
  const tables = new Map(
    Object.entries(tablesOf(levels, each, seed)).map(([file, text]) => [
      file,
      parseCsv(sourceText(file, text), report),
    ]),
  );
  const located = <T>(value: T) => ({
    value,
    raw: value,
    at: nowhere,
    atKey: nowhere,
    writtenAt: () => undefined,
  });
  const records = {
    section: located(section),
    traits: { records: [located(trait)], declared: new Map(), whole: true },
    horizons: {
      records: [],
      declared: new Map([
        ['foot', nowhere()],
        ['head', nowhere()],
      ]),
      whole: true,
    },
    sheets: tables,
  } as unknown as LineageRecords; // only what a section reads
  const age = (mean: number) => ({
    from: mean,
    to: mean,
    decimals: 2,
    basis: 'dated',
    mean,
    sd: 0.02,
    kind: 'normal',
  });
  const lineage = {
    records,
    horizonAges: new Map([
      ['foot', age(20)],
      ['head', age(18)],
    ]),
    scheme: { measurements: new Map(), views: new Map() },
  } as unknown as ResolvedLineage; // only what a section asks of it
  return { records, lineage };
}

const nowhere = () => ({ source: sourceText('bench', ''), start: 0, end: 1 });

const trait = { id: 'height', length: 'crown', scale: 'log' } as unknown as Trait; // only what a section asks of it

const section: Section = {
  id: 'bank',
  name: { en: 'Bank' },
  taxon: 'digger',
  trait: 'height',
  tooth: 'm2',
  levels: 'levels.csv',
  individuals: 'crowns.csv',
  wear: [
    { id: 'fresh', crown: 'whole', name: { en: 'fresh' } },
    { id: 'blunt', crown: 'worn', name: { en: 'blunt' } },
  ],
  rocks: [],
};

function tablesOf(levels: number, each: number, seed: number): Record<string, string> {
  const random = seededRandom('large section', levels, each, seed);
  let mean = Math.log(10);
  const heights: string[] = [];
  const crowns: string[] = [];
  for (let level = 0; level < levels; level++) {
    mean += 0.01 * normalDraw(random);
    heights.push(`l${level},${level},${level === 0 ? 'foot' : level === levels - 1 ? 'head' : ''}`);
    for (let k = 0; k < each; k++) {
      const worn = k % 4 === 3;
      const height = Math.exp(mean + 0.05 * normalDraw(random)) * (worn ? 0.9 : 1);
      crowns.push(`${level}-${k},l${level},m2,${worn ? 'blunt' : 'fresh'},${height.toFixed(2)}`);
    }
  }
  return {
    'levels.csv': `level,height (m),horizon\n${heights.join('\n')}\n`,
    'crowns.csv': `catalogNumber,level,tooth,wear,crown (mm)\n${crowns.join('\n')}\n`,
  };
}
