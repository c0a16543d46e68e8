/**
 * The nearest of some words to one that is not among them, or undefined when none is near.
 * Near means at most a third of its letters changed, added, dropped or swapped with a neighbour
 * (optimal string alignment; Damerau 1964), or the same word in other case.
 */
export function findNearest(word: string, known: Iterable<string>): string | undefined {
  let best: string | undefined;
  let least = Math.max(1, Math.floor(word.length / 3)) + 1;
  for (const each of known) {
    if (each.toLowerCase() === word.toLowerCase()) return each;
    if (Math.abs(each.length - word.length) >= least) continue;
    const steps = editSteps(word.toLowerCase(), each.toLowerCase());
    if (steps < least) [least, best] = [steps, each];
  }
  return best;
}

/** ‘; did you mean "x"?’, or nothing when no known word is near. */
export function didYouMean(word: string, known: Iterable<string>): string {
  const nearest = findNearest(word, known);
  return nearest === undefined ? '' : `; did you mean "${nearest}"?`;
}

function editSteps(one: string, other: string): number {
  let before: number[] = [];
  let last = Array.from({ length: other.length + 1 }, (_, index) => index);
  for (let i = 1; i <= one.length; i++) {
    const row = [i];
    for (let j = 1; j <= other.length; j++) {
      const same = one[i - 1] === other[j - 1];
      let steps = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      const swapped = i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1];
      if (swapped) steps = Math.min(steps, before[j - 2]! + 1);
      row.push(steps);
    }
    [before, last] = [last, row];
  }
  return last[other.length]!;
}
