import { normalDensity, normalProbability } from '../statistics/index.ts';
import { ageSigmaMa, type HorizonAge } from './horizon-age.ts';

/**
 * Probability that one bed is older than another of independent age: exact for uniform and normal ages. Errors of the
 * ends of a uniform age are not used. A half where both are the same exact age.
 */
export function probabilityOlder(one: HorizonAge, other: HorizonAge): number {
  const [a, b] = [sharpened(one), sharpened(other)];
  if (a.kind === 'normal' && b.kind === 'normal') {
    const sigma = Math.hypot(a.sigmaMa, b.sigmaMa);
    if (sigma === 0) return a.meanMa === b.meanMa ? 0.5 : Number(a.meanMa > b.meanMa);
    return normalProbability((a.meanMa - b.meanMa) / sigma);
  }
  if (a.kind === 'uniform' && b.kind === 'uniform') {
    const rise = (ma: number) => meanShare(ma, b.toMa, b.fromMa);
    return (rise(a.fromMa) - rise(a.toMa)) / (a.fromMa - a.toMa);
  }
  if (a.kind === 'uniform' && b.kind === 'normal') return uniformOlder(a, b);
  return 1 - probabilityOlder(b, a);
}

/** A uniform age without width is an exact one. */
function sharpened(age: HorizonAge): HorizonAge {
  return ageSigmaMa(age) > 0
    ? age
    : { kind: 'normal', meanMa: age.kind === 'normal' ? age.meanMa : age.toMa, sigmaMa: 0 };
}

function uniformOlder(
  a: Extract<HorizonAge, { kind: 'uniform' }>,
  b: Extract<HorizonAge, { kind: 'normal' }>,
): number {
  if (b.sigmaMa === 0) return Math.min(1, Math.max(0, (a.fromMa - b.meanMa) / (a.fromMa - a.toMa)));
  const rise = (ma: number) => {
    const z = (ma - b.meanMa) / b.sigmaMa;
    return b.sigmaMa * (z * normalProbability(z) + normalDensity(z));
  };
  return (rise(a.fromMa) - rise(a.toMa)) / (a.fromMa - a.toMa);
}

/** Integral, up to an age, of the share of a uniform range that is younger. */
function meanShare(ma: number, youngerMa: number, olderMa: number): number {
  if (ma <= youngerMa) return 0;
  if (ma >= olderMa) return (olderMa - youngerMa) / 2 + ma - olderMa;
  return (ma - youngerMa) ** 2 / (2 * (olderMa - youngerMa));
}

/** How two beds stand to each other: known from the section, or a probability from their ages. */
export type BedOrder =
  | { readonly known: 'same-bed' | 'older' | 'younger' }
  | { readonly known: 'no'; readonly probabilityOlder: number };

/** Beds that each bed lies above, directly, by id. */
export type BedsBelow = ReadonlyMap<string, readonly string[]>;

/** Order of the first bed against the second: by superposition where one lies over the other, else by their ages. */
export function orderOfBeds(
  one: { readonly id: string; readonly age: HorizonAge },
  other: { readonly id: string; readonly age: HorizonAge },
  below: BedsBelow,
): BedOrder {
  if (one.id === other.id) return { known: 'same-bed' };
  if (liesAbove(one.id, other.id, below)) return { known: 'younger' };
  if (liesAbove(other.id, one.id, below)) return { known: 'older' };
  return { known: 'no', probabilityOlder: probabilityOlder(one.age, other.age) };
}

/** Whether a bed lies above another, directly or through others. Beds above each other in a ring are all above all. */
export function liesAbove(upper: string, lower: string, below: BedsBelow): boolean {
  const seen = new Set<string>();
  const next = [...(below.get(upper) ?? [])];
  for (let bed = next.pop(); bed !== undefined; bed = next.pop()) {
    if (bed === lower) return true;
    if (seen.has(bed)) continue;
    seen.add(bed);
    next.push(...(below.get(bed) ?? []));
  }
  return false;
}
