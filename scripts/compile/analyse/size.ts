import { slopeOnTree, type NoSlope, type TreeSlope } from '../../../analysis/estimate/index.ts';
import { openReport } from '../findings/report.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { Trait } from '../schema/index.ts';
import type { DatedLineageTree } from './date-trees.ts';
import { unlessRefused } from './engine-refusal.ts';
import { observationsIn, type TraitEvidence } from './estimate-lineage-trait.ts';
import { findLimits, type SpecimenLimit } from './limits.ts';
import { observeTrait, type ObservedTrait } from './observe-trait.ts';

/** Why nothing can be told of a trait and size. */
export type NoSize = NoSlope | 'no-tree' | 'is-the-size' | 'not-clear';

/** One quantity against size: the trait itself, or a part of it, in the order of its measurements. */
export interface SizeSeries {
  measurement: string | undefined;
  observed: ObservedTrait;
  limits: ReadonlyMap<string, readonly SpecimenLimit[]>;
  slope: TreeSlope | NoSize;
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
 * A trait on the log of its declared size across the taxa of the reference tree, and for a ratio both its lengths likewise;
 * undefined for a trait that declares no size, or one that no scheme knows.
 */
export function sizeOfTrait(
  evidence: TraitEvidence,
  lineage: ResolvedLineage,
  reference: DatedLineageTree | undefined,
): TraitSize | undefined {
  const { trait, kind } = evidence.observed;
  if (typeof trait.size !== 'string' || !lineage.scheme.measurements.has(trait.size)) return undefined;
  const size = observeLength(trait, trait.size, lineage);
  const sizes = new Map(
    [...size.taxa].flatMap(([taxon, { mean }]): [string, number][] => (mean ? [[taxon, mean.mean]] : [])),
  );
  const against = (series: Omit<SizeSeries, 'slope'>): SizeSeries => ({
    ...series,
    slope: series.measurement === trait.size ? 'is-the-size' : slopeOnSize(series, sizes, reference),
  });
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
  reference: DatedLineageTree | undefined,
): TreeSlope | NoSize {
  if (!reference) return 'no-tree';
  const observations = observationsIn(reference.taxa, series);
  const own = observations.flatMap(({ taxon }) => sizes.get(taxon) ?? []);
  const [least, most] = [Math.min(...own), Math.max(...own)];
  const lineAt = own.length > 0 ? steps(least, most) : [];
  const question = { tree: reference.dated, observations, predictor: sizes, lineAt };
  return unlessRefused(() => slopeOnTree(question)) ?? 'taxa-at-one-point';
}

function steps(from: number, to: number): number[] {
  return Array.from({ length: linePoints }, (_, step) => from + ((to - from) * step) / (linePoints - 1));
}
