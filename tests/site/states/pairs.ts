/** Named lists of values, and one value of each. */
export type Choices = Record<string, readonly (string | number)[]>;
export type Case = Record<string, string | number>;

/** Every pair of values of two different names that some allowed case holds, as `name=value name=value`. */
export function allPairs(choices: Choices, allowed: (each: Case) => boolean): Set<string> {
  return new Set(allCases(choices).filter(allowed).flatMap(pairsOf));
}

/** The pairs that one case holds. */
export function pairsOf(each: Case): string[] {
  const words = Object.entries(each).map(([name, value]) => `${name}=${value}`);
  return words.flatMap((word, index) => words.slice(index + 1).map((other) => `${word} ${other}`));
}

/**
 * Few cases that together hold every allowed pair: the case with the most new pairs is taken until none is left. The
 * order of the choices decides between equals, so the same choices give the same table.
 */
export function pairwise(choices: Choices, allowed: (each: Case) => boolean): Case[] {
  const cases = allCases(choices).filter(allowed);
  const missing = allPairs(choices, allowed);
  const taken: Case[] = [];
  while (missing.size > 0) {
    const gain = (each: Case) => pairsOf(each).filter((pair) => missing.has(pair)).length;
    const best = cases.reduce((a, b) => (gain(b) > gain(a) ? b : a));
    taken.push(best);
    for (const pair of pairsOf(best)) missing.delete(pair);
  }
  return taken;
}

/** Every case: the full product of the choices. */
export function allCases(choices: Choices): Case[] {
  return Object.entries(choices).reduce<Case[]>(
    (cases, [name, values]) => cases.flatMap((each) => values.map((value) => ({ ...each, [name]: value }))),
    [{}],
  );
}
