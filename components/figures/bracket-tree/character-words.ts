import type { CompiledCharacter } from '../../../scripts/compile/contract.ts';
import type { LineageView } from '../../lineage/view.ts';

/**
 * What the tree says of a character: its states, from one to the other where every certain change is the same, how often
 * it changes, and whether the tree leaves open where.
 */
export function characterWords(view: LineageView, { states, steps, changes }: CompiledCharacter): string {
  const { voice } = view;
  const label = (id: string) => view.text(states.find((state) => state.id === id)?.label);
  const kinds = new Set(changes.map(({ from, to }) => `${from.join()} ${to.join()}`));
  const [first] = changes;
  const isOne = kinds.size === 1 && first?.from.length === 1 && first.to.length === 1;
  const course = isOne
    ? voice.say('tree.fromTo', { from: label(first.from[0]!), to: label(first.to[0]!) })
    : states.map(({ id }) => label(id)).join(', ');
  return [
    `${course}.`,
    ...(steps === null ? [] : [voice.say('tree.changes_', { count: steps })]),
    ...(steps !== null && changes.length === 0 ? [voice.say('tree.whichBranch')] : []),
  ].join(' ');
}
