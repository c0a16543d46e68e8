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
export function scaleOf(trait: Trait, kind: TraitKind): 'plain' | 'log' | 'logit' {
  return trait.scale ?? (kind.kind === 'angle' || kind.kind === 'count' ? 'plain' : 'log');
}

/** The value of a trait from its measurements, in its own unit: a share, the length itself, or a geometric mean. */
export function combine(trait: Trait, kind: TraitKind, values: readonly number[]): number {
  if (kind.kind === 'ratio') return (values[0]! / values[1]!) * (trait.ratio!.unit === 'percent' ? 100 : 1);
  if (kind.kind !== 'size') return values[0]!;
  return Math.exp(values.reduce((sum, value) => sum + Math.log(value), 0) / values.length);
}
