/** How far a trait of a fossil that does not preserve is backed by its living relatives on both sides; I is the strongest. */
export type BracketLevel = 'I' | 'II' | 'III';

/** What the living relatives say of the fork where the fossil's line leaves. */
export type BracketVerdict = 'decisive positive' | 'equivocal' | 'decisive negative';

/** One reading of a bracket. */
export interface BracketReading {
  readonly level: BracketLevel;
  /** No sign of the trait on the fossil's bones: the level has a prime. */
  readonly prime: boolean;
  readonly verdict: BracketVerdict;
}

/**
 * Levels of inference by the nearest living relatives on both sides of a fossil: both have the trait, one, or none (Witmer 1995,
 * in Thomason, Functional Morphology in Vertebrate Paleontology, 19–33). A relative of which it is not known, or that
 * varies, is `undefined`: then every level that it leaves open is given, strongest first, and none is picked.
 */
export function bracketReadings(bracket: {
  readonly first: boolean | undefined;
  readonly second: boolean | undefined;
  readonly signOnBone: boolean;
}): BracketReading[] {
  const open = (side: boolean | undefined) => (side === undefined ? [true, false] : [side]);
  const sums = open(bracket.first).flatMap((one) =>
    open(bracket.second).map((other) => Number(one) + Number(other)),
  );
  return [...new Set(sums)]
    .sort((a, b) => b - a)
    .map((having) => ({ ...readings[having]!, prime: !bracket.signOnBone }));
}

/** By how many of the two relatives have the trait. */
const readings: readonly Omit<BracketReading, 'prime'>[] = [
  { level: 'III', verdict: 'decisive negative' },
  { level: 'II', verdict: 'equivocal' },
  { level: 'I', verdict: 'decisive positive' },
];
