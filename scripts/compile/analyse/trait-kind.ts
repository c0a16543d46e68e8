import {
  geometricMean,
  geometricMeanError,
  ratioOf,
  type TraitScale,
} from '../../../analysis/traits/index.ts';
import type { Trait } from '../schema/index.ts';

/** What a trait is and the measurements it needs, in order. */
export type TraitKind =
  | { kind: 'ratio'; measurements: readonly [part: string, whole: string] }
  | { kind: 'length' | 'angle' | 'count'; measurements: readonly [string] }
  | { kind: 'size'; measurements: readonly string[] };

/** The kind of a trait; undefined when the record names none, or more than one. */
export function findTraitKind(trait: Trait): TraitKind | undefined {
  const kinds: TraitKind[] = [];
  if (trait.ratio) kinds.push({ kind: 'ratio', measurements: [trait.ratio.part, trait.ratio.whole] });
  for (const kind of ['length', 'angle', 'count'] as const) {
    const measurement = trait[kind];
    if (measurement !== undefined) kinds.push({ kind, measurements: [measurement] });
  }
  if (Array.isArray(trait.size)) kinds.push({ kind: 'size', measurements: trait.size });
  return kinds.length === 1 ? kinds[0] : undefined;
}

/** The unit that a trait's values are printed in. */
export function unitOf(trait: Trait, kind: TraitKind): string {
  if (kind.kind === 'ratio') return trait.ratio!.unit === 'percent' ? 'percent' : 'ratio';
  if (kind.kind === 'angle') return 'degrees';
  return kind.kind === 'count' ? 'count' : 'mm';
}

/** The scale a trait is analysed on: as declared, else log for ratios, lengths and sizes and plain for the rest. */
export function scaleOf(trait: Trait, kind: TraitKind): TraitScale {
  const declared = trait.scale ?? (kind.kind === 'angle' || kind.kind === 'count' ? 'plain' : 'log');
  return { kind: declared, whole: timesOf(trait) };
}

/** What a ratio is multiplied by to come out in the trait's unit: 100 for per cent. */
export function timesOf(trait: Trait): number {
  return trait.ratio?.unit === 'none' ? 1 : 100;
}

/** The value of a trait from its measurements, in its own unit; undefined where they give none (a whole of 0, a size of 0 mm). */
export function findValue(trait: Trait, kind: TraitKind, values: readonly number[]): number | undefined {
  const [first, second] = values;
  if (kind.kind === 'ratio') return second! > 0 ? (first! / second!) * timesOf(trait) : undefined;
  if (kind.kind === 'size') return values.every((value) => value > 0) ? geometricMean(values) : undefined;
  return first!;
}

/** Standard error of a trait from independent standard errors of its measurements, to first order. */
export function errorOfValue(
  trait: Trait,
  kind: TraitKind,
  means: readonly number[],
  errors: readonly number[],
): number {
  if (kind.kind === 'size') return geometricMeanError(means, errors);
  if (kind.kind !== 'ratio') return errors[0]!;
  const [part, whole] = means.map((mm, index) => ({ mm, error: errors[index]! }));
  return ratioOf(part!, whole!, { times: timesOf(trait) }).error;
}
