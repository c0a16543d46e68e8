import type { Tree } from '../tree/index.ts';
import { scoredTips, type Character } from './character.ts';
import { mostShared } from './count-steps.ts';

/**
 * Fewest steps on any tree of the scored tips: one less than the fewest states that give every tip one it may have
 * (states less one where each tip has one state). 0 where none is scored. Exact by trying; unsure tips can cost as much
 * as there are orders of the states that no sure tip has, which suits the few states of a character.
 */
export function minimumSteps(tree: Tree, character: Character): number {
  const tips = [...scoredTips(tree, character).values()];
  const needed = new Set(tips.flatMap((states) => (states.size === 1 ? [...states] : [])));
  return Math.max(0, fewestStates(tips, needed) - 1);
}

/** Most steps on any tree of the scored tips, those of a single fork: scored tips less those that may share one state. */
export function maximumSteps(tree: Tree, character: Character): number {
  const tips = [...scoredTips(tree, character).values()];
  return tips.length - mostShared(tips).holders;
}

/**
 * Whether a character can need more steps on one tree than on another: where each tip has one state, whether two states
 * stand in two tips or more (common practice, no source). Not so where all are alike, or all but one state stand once.
 */
export function isInformative(tree: Tree, character: Character): boolean {
  return maximumSteps(tree, character) > minimumSteps(tree, character);
}

function fewestStates(tips: readonly ReadonlySet<string>[], chosen: ReadonlySet<string>): number {
  const open = tips.filter((states) => ![...states].some((state) => chosen.has(state)));
  if (open.length === 0) return chosen.size;
  return Math.min(...[...open[0]!].map((state) => fewestStates(open, new Set([...chosen, state]))));
}
