import type { LineageView } from '../../lineage/view.ts';
import type { SvgWords } from '../scene/svg.ts';
import type { BracketData } from './bracket-data.ts';
import { forksOf, tipsOf, type Kin } from './kin.ts';
import type { AxisWords } from './time-axis.ts';

/** What the axis says; a narrow figure says it in the trade's own letters. */
export function axisWords({ voice }: LineageView, short: boolean): AxisWords {
  return {
    unit: short ? 'Ma' : voice.say('tree.years'),
    older: voice.say('tree.older'),
    today: voice.say('tree.today'),
  };
}

/** Name and description of the figure, with its counts. */
export function bracketDescription({ voice }: LineageView, data: BracketData): SvgWords {
  return {
    title: voice.say('tree.figure'),
    description: voice.say('tree.description', {
      animals: voice.say('tree.animals_', { count: tipsOf(data.kin.root).length }),
      forks: voice.say('tree.forks_', { count: forksOf(data.kin.root).length }),
      oldest: voice.number(data.oldestMa, 0),
    }),
  };
}

/** A fork in words: its age, and how many animals hang on it. */
export function forkText({ voice }: LineageView, data: BracketData, fork: Kin): string {
  return voice.say('tree.fork', {
    age: voice.number(data.kin.agesMa.get(fork.id)!, 1),
    animals: voice.say('tree.animals_', { count: tipsOf(fork).length }),
  });
}
