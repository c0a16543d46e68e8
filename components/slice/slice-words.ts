import type { LineageView } from '../lineage/view.ts';
import type { Voice } from '../messages/say.ts';
import type { CutBranch } from './slice-at.ts';

/** Age and count of a slice: '32 million years ago: at least 8 branches'. */
export function ageWords(voice: Pick<Voice, 'say' | 'number'>, ageMa: number, count: number): string {
  const age = voice.number(ageMa, Number.isInteger(ageMa) ? 0 : 1);
  return count === 1
    ? voice.say('slice.alone', { age })
    : voice.say('slice', { age, count: voice.number(count, 0) });
}

/** How many of the branches have bones of that age, and how many have none. */
export function boneWords(voice: Pick<Voice, 'say' | 'number'>, cut: readonly CutBranch[]): string {
  const bones = cut.filter(({ hasBone }) => hasBone).length;
  return voice.say('slice.bones', {
    bones: voice.number(bones, 0),
    others: voice.number(cut.length - bones, 0),
  });
}

/** Animals whose skulls the shapes along the tree are worked out from: drawn, whole in the frame, and measured. */
export function sourceCount({ lineage, findValue }: LineageView): number {
  return lineage.drawings.filter(({ taxon, broken }) => !broken && findValue(taxon)?.status === 'measured')
    .length;
}
