import { slopeOnTree, type NoSlope, type TreeSlope } from '../../../analysis/estimate/index.ts';
import type { DatedTree } from '../../../analysis/tree/index.ts';
import { openReport } from '../findings/report.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { Trait } from '../schema/index.ts';
import { unlessRefused } from './engine-refusal.ts';
import { observationsIn, type TraitEvidence } from './estimate-lineage-trait.ts';
import { everyHypothesis, findDated } from './hypotheses.ts';
import { findLimits, type SpecimenLimit } from './limits.ts';
import { observeTrait, type ObservedTrait } from './observe-trait.ts';
import type { SpanGrounds } from './span.ts';

/** Why nothing can be told of a trait and size. */
export type NoSize = NoSlope | 'no-tree' | 'is-the-size' | 'not-clear';

/** The slope on size on one tree, by one rule of dating, or why there is none. */
export interface SizeRow {
  tree: string;
  rule: string;
  slope: TreeSlope | NoSize | 'not-dated';
}

/** One quantity against size: the trait itself, or a part of it, in the order of its measurements. */
export interface SizeSeries {
  measurement: string | undefined;
  observed: ObservedTrait;
  limits: ReadonlyMap<string, readonly SpecimenLimit[]>;
  /** On the reference tree by its own rule. */
  slope: TreeSlope | NoSize;
  /** On every tree and rule of dating, the reference first; none where there is nothing to fit. */
  rows: SizeRow[];
}

/** A trait against the size that it declares. */
export interface TraitSize {
  measurement: string;
  /** Mean of the natural log of size, mm, by taxon. */
  sizes: ReadonlyMap<string, number>;
  trait: SizeSeries;
  /** Both lengths of a ratio; none for another trait. */
  parts: SizeSeries[];
}

/** Points of a fitted line. */
const linePoints = 25;

/**
 * A trait on the log of its declared size across the taxa of every tree and rule of dating, and for a ratio both its
 * lengths likewise; undefined for a trait that declares no size, or one that no scheme knows.
 */
export function sizeOfTrait(
  evidence: TraitEvidence,
  lineage: ResolvedLineage,
  { trees, ages }: Pick<SpanGrounds, 'trees' | 'ages'>,
): TraitSize | undefined {
  const { trait, kind } = evidence.observed;
  if (typeof trait.size !== 'string' || !lineage.scheme.measurements.has(trait.size)) return undefined;
  const size = observeLength(trait, trait.size, lineage);
  const sizes = new Map(
    [...size.taxa].flatMap(([taxon, { mean }]): [string, number][] => (mean ? [[taxon, mean.mean]] : [])),
  );
  const dated = everyHypothesis(trees).map((each) => ({ ...each, dated: findDated(each, ages.ofDraw(0)) }));
  const against = (series: Omit<SizeSeries, 'slope' | 'rows'>): SizeSeries => {
    if (series.measurement === trait.size) return { ...series, slope: 'is-the-size', rows: [] };
    const rows = dated.map(({ id, dating, dated: tree }, index): SizeRow => ({
      tree: id,
      rule: dating.rule,
      slope: tree ? slopeOnSize(series, sizes, tree, index === 0 ? linePoints : 0) : 'not-dated',
    }));
    const first = rows[0]?.slope ?? 'no-tree';
    return { ...series, slope: first === 'not-dated' ? 'no-tree' : first, rows };
  };
  const parts = kind.kind === 'ratio' ? kind.measurements : [];
  return {
    measurement: trait.size,
    sizes,
    trait: against({ measurement: kind.kind === 'length' ? kind.measurements[0] : undefined, ...evidence }),
    parts: parts.map((measurement) => {
      const observed = observeLength(trait, measurement, lineage);
      // What a broken length cannot say was told at the trait: a second report would only repeat it.
      return against({ measurement, observed, limits: findLimits(observed, lineage, openReport()) });
    }),
  };
}

/** One measurement of the animals that count for a trait, as a length on log scale. */
function observeLength(trait: Trait, measurement: string, lineage: ResolvedLineage): ObservedTrait {
  const { ratio: _ratio, angle: _angle, count: _count, size: _size, ...rest } = trait;
  const own: Trait = { ...rest, id: measurement, length: measurement, scale: 'log' };
  return observeTrait(own, { kind: 'length', measurements: [measurement] }, lineage);
}

function slopeOnSize(
  series: TraitEvidence,
  sizes: ReadonlyMap<string, number>,
  tree: DatedTree,
  points: number,
): TreeSlope | NoSize {
  const observations = observationsIn(new Set(tree.label), series);
  const own = observations.flatMap(({ taxon }) => sizes.get(taxon) ?? []);
  const [least, most] = [Math.min(...own), Math.max(...own)];
  const lineAt = own.length > 0 ? steps(least, most, points) : [];
  const question = { tree, observations, predictor: sizes, lineAt };
  return unlessRefused(() => slopeOnTree(question)) ?? 'taxa-at-one-point';
}

function steps(from: number, to: number, points: number): number[] {
  return Array.from({ length: points }, (_, step) => from + ((to - from) * step) / (points - 1));
}
