import type { TraitKind } from '../analyse/trait-kind.ts';
import type { CompiledTrait } from '../contract.ts';
import type { SchemeIndex } from '../resolve/scheme-index.ts';

/** The landmarks between which a trait is read, for the ruler on a drawing; undefined for counts, angles and sizes. */
export function measuredLine(kind: TraitKind, scheme: SchemeIndex): CompiledTrait['measured'] {
  if (kind.kind !== 'ratio' && kind.kind !== 'length') return undefined;
  const [part, whole] = kind.measurements.map((id) => scheme.measurements.get(id));
  if (part?.from === undefined || part.to === undefined) return undefined;
  const end = whole?.from === part.from ? whole.to : undefined;
  return { from: part.from, to: part.to, ...(end === undefined ? {} : { end }) };
}
