import { requireTipsByLabel, type Tree } from '../tree/index.ts';

/**
 * States of one character by the label of the taxon. Several states mean that the taxon has one of them and it is not
 * known which; none, or no entry, means that the taxon is not scored.
 */
export type Character = ReadonlyMap<string, readonly string[]>;

/** States, each once, of every scored tip by its node; taxa that are not on the tree are passed over. */
export function scoredTips(tree: Tree, character: Character): Map<number, ReadonlySet<string>> {
  const scored = new Map<number, ReadonlySet<string>>();
  for (const [label, tip] of requireTipsByLabel(tree)) {
    const states = character.get(label);
    if (states !== undefined && states.length > 0) scored.set(tip, new Set(states));
  }
  return scored;
}
