import type { CompiledLineage, CompiledTrait, Interval, Status } from '../../../scripts/compile/contract.ts';
import { branchesOf, type Branch } from './branch-list.ts';

/** One animal on the plate. */
export interface PlateTaxon {
  id: string;
  name: string;
  living: boolean;
  outgroup: boolean;
  status: Status;
  estimate: number | null;
  interval: Interval;
  /** How far the ends of the interval reach over other trees and ages, where that is further. */
  span?: Interval;
  atLeast?: number;
  atMost?: number;
  approximate: boolean;
  /** Age at which the mark stands. */
  placedMa: number;
  firstMa: number;
  lastMa: number;
  /** The bar is one bed, dated no better than its length. */
  oneBed: boolean;
}

export interface ChartUnit {
  name: string;
  from: number;
  to: number;
  /** The period that an epoch belongs to. */
  period?: ChartUnit;
}

/** What one plate shows, in one language, for one trait. */
export interface PlateData {
  taxa: PlateTaxon[];
  branches: Branch[];
  /** Present when the trait is a share of a measured line, so that skull, ruler and chart have one scale. */
  ruler: boolean;
  unit: string;
  values: number[];
  oldestMa: number;
  epochs: ChartUnit[];
  marks: { at: number; text: string }[];
  label: string;
  meaning: string;
  /** Fitted line of the trend with its interval, `at` in Ma; none where no trend may be told. */
  trend?: { at: number; median: number; interval: Interval }[];
}

/** Picks the plate of one trait from a compiled lineage. Taxa without any age are left to the table. */
export function plateData(lineage: CompiledLineage, trait: CompiledTrait, language: string): PlateData {
  const text = (texts: Record<string, string>) =>
    texts[language] ?? texts[lineage.about.languages[0]!] ?? texts['en'] ?? '';
  const taxa = plateTaxa(lineage, trait);
  const tree = lineage.trees.find((each) => each.reference);
  const branches = tree ? branchesOf(tree, trait, taxa, lineage.ghosts) : [];
  const ends = taxa.flatMap((taxon) => [taxon.estimate, ...taxon.interval, taxon.atLeast, taxon.atMost]);
  return {
    taxa,
    branches,
    ruler: trait.kind === 'ratio' && trait.unit === 'percent',
    unit: trait.unit,
    values: ends.filter((value): value is number => typeof value === 'number'),
    oldestMa: Math.max(
      0,
      ...taxa.map((taxon) => taxon.firstMa),
      ...branches.map((branch) => branch.from.ageMa),
    ),
    epochs: epochsOf(lineage, text),
    marks: trait.marks.map((mark) => ({ at: mark.at, text: text(mark.text) })),
    label: text(trait.label),
    meaning: text(trait.meaning),
    trend: trait.trend && trait.trend.verdict !== 'cannot-tell' ? trait.trend.line : [],
  };
}

function epochsOf(lineage: CompiledLineage, text: (texts: Record<string, string>) => string): ChartUnit[] {
  const plain = (unit: CompiledLineage['chart']['units'][number]) => ({
    name: text(unit.name),
    from: unit.from,
    to: unit.to,
  });
  const periods = lineage.chart.units.filter((unit) => unit.rank === 'period').map(plain);
  return lineage.chart.units
    .filter((unit) => unit.rank === 'epoch')
    .map(plain)
    .sort((a, b) => a.to - b.to)
    .map((epoch) => {
      const period = periods.find((each) => each.from >= epoch.from && each.to <= epoch.to);
      return period ? { ...epoch, period } : epoch;
    });
}

function plateTaxa(lineage: CompiledLineage, trait: CompiledTrait): PlateTaxon[] {
  const taxa = new Map(lineage.taxa.map((taxon) => [taxon.id, taxon]));
  return trait.values.flatMap((value) => {
    const taxon = taxa.get(value.taxon);
    const firstMa = taxon?.finds.first ?? taxon?.age?.from;
    const lastMa = taxon?.finds.last ?? taxon?.age?.to;
    if (!taxon || firstMa === undefined || lastMa === undefined) return [];
    return {
      id: taxon.id,
      name: taxon.name,
      living: taxon.living,
      outgroup: taxon.role === 'outgroup',
      status: value.status,
      estimate: value.estimate,
      interval: value.interval,
      ...(value.limits?.atLeast !== undefined && { atLeast: value.limits.atLeast }),
      ...(value.limits?.atMost !== undefined && { atMost: value.limits.atMost }),
      ...(value.span && { span: value.span.interval }),
      approximate: value.facets.includes('approximate'),
      placedMa: value.placedMa ?? (firstMa + lastMa) / 2,
      firstMa,
      lastMa,
      oneBed: taxon.finds.horizons.length === 1,
    };
  });
}
