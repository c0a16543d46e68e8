import { findRoot } from '../statistics/index.ts';

/**
 * How far a true end may lie beyond the finds, as a share of the range between first and last find, at a confidence,
 * if finds fall at random and evenly through the true range: (1 − C)^(−1/(H − 1)) − 1 for H horizons (Strauss and
 * Sadler 1989, Mathematical Geology 21: 411–427, equation 20). Undefined for fewer than two horizons.
 */
export function findRangeExtension(horizons: number, confidence: number): number | undefined {
  requireConfidence(confidence);
  return horizons < 2 ? undefined : (1 - confidence) ** (-1 / (horizons - 1)) - 1;
}

/** The same for both ends at once (equation 19). Undefined for fewer than two horizons. */
export function findTwoEndedExtension(horizons: number, confidence: number): number | undefined {
  requireConfidence(confidence);
  if (horizons < 2) return undefined;
  const power = -(horizons - 1);
  const reached = (share: number) => 1 - 2 * (1 + share) ** power + (1 + 2 * share) ** power - confidence;
  let high = 1;
  while (reached(high) < 0) high *= 2;
  return findRoot(reached, 0, high);
}

/**
 * Youngest age, Ma, that the true last occurrence may have at a confidence, from first and last find and the number
 * of horizons, never past the present. Undefined for fewer than two horizons: one find has no range to go by.
 */
export function findLastOccurrenceLimit(
  finds: { readonly firstMa: number; readonly lastMa: number; readonly horizons: number },
  confidence: number,
): { readonly extensionMa: number; readonly youngestMa: number } | undefined {
  const share = findRangeExtension(finds.horizons, confidence);
  if (share === undefined) return undefined;
  const extensionMa = share * (finds.firstMa - finds.lastMa);
  return { extensionMa, youngestMa: Math.max(0, finds.lastMa - extensionMa) };
}

function requireConfidence(confidence: number): void {
  if (!(confidence > 0 && confidence < 1))
    throw new Error(`confidence must lie inside 0 to 1, got ${confidence}`);
}
