import { chartRows, subperiodRows, type ChartRow } from './chart-table.ts';

/** Rank of a unit of the chart. */
export type ChartRank = 'era' | 'period' | 'subperiod' | 'epoch' | 'stage';

/** One unit of the chart: it reaches from its base to the base of the unit above, 0 for the youngest. */
export interface ChartUnit {
  /** The English name in kebab-case. */
  readonly id: string;
  readonly name: string;
  readonly nameEs: string;
  readonly rank: ChartRank;
  readonly fromMa: number;
  readonly toMa: number;
  /** Error that the chart prints for the base and the top, Ma; undefined where it prints none. */
  readonly fromErrorMa: number | undefined;
  readonly toErrorMa: number | undefined;
  /** Whether the chart marks the base, or the top, as approximate. */
  readonly fromApproximate: boolean;
  readonly toApproximate: boolean;
}

/** Version of the chart; it belongs in every output that uses its ages. */
export const chartVersion = 'v2024/12';

/** How the chart is cited, its licence included. */
export const chartCitation =
  'International Commission on Stratigraphy: International Chronostratigraphic Chart v2024/12 (CC BY 4.0)';

/** Every unit of the Phanerozoic: eras, periods, subperiods, epochs, then stages, youngest first within a rank. */
export const chartUnits: readonly ChartUnit[] = [
  ...unitsOf('era', chartRows.era),
  ...unitsOf('period', chartRows.period),
  ...subperiodRows.map(([name, nameEs, fromMa, fromErrorMa, toMa, toErrorMa]) => ({
    ...named('subperiod', name, nameEs),
    fromMa,
    toMa,
    fromErrorMa,
    toErrorMa,
    fromApproximate: false,
    toApproximate: false,
  })),
  ...unitsOf('epoch', chartRows.epoch),
  ...unitsOf('stage', chartRows.stage),
];

function unitsOf(rank: ChartRank, rows: readonly ChartRow[]): ChartUnit[] {
  return rows.map(([name, nameEs, fromMa, fromErrorMa, approximate], index) => {
    const [, , toMa, toErrorMa, toApproximate] = rows[index - 1] ?? ['', '', 0];
    return {
      ...named(rank, name, nameEs),
      fromMa,
      toMa,
      fromErrorMa,
      toErrorMa,
      fromApproximate: approximate === true,
      toApproximate: toApproximate === true,
    };
  });
}

function named(rank: ChartRank, name: string, nameEs: string) {
  return { id: name.toLowerCase().replaceAll(' ', '-'), name, nameEs, rank };
}

const synonyms: readonly (readonly [pattern: RegExp, chart: string])[] = [
  [/\blate\b/, 'upper'],
  [/\bearly\b/, 'lower'],
  [/\bpalaeo/, 'paleo'],
  [/\btardio\b/, 'superior'],
  [/\btemprano\b/, 'inferior'],
  [/\bcretaceo\b/, 'cretacico'],
];

function plain(name: string): string {
  const bare = name
    .trim()
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[\s-]+/g, ' ');
  return synonyms.reduce((text, [pattern, chart]) => text.replace(pattern, chart), bare);
}

const byName = new Map<string, ChartUnit>();
for (const unit of chartUnits)
  for (const name of [unit.name, unit.nameEs]) if (!byName.has(plain(name))) byName.set(plain(name), unit);

/**
 * Unit of a name, in English or Spanish, whatever its case and accents, with Late for Upper, Early for Lower and palaeo
 * for paleo. Undefined for a name that is not on the chart.
 */
export function findChartUnit(name: string): ChartUnit | undefined {
  return byName.get(plain(name));
}

/** Every name of the chart, English and Spanish, for suggestions. */
export function chartNames(): string[] {
  return chartUnits.flatMap(({ name, nameEs }) => [name, nameEs]);
}
