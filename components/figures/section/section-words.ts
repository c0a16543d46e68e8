import { levelMean, type SectionView } from '../../section/section-view.ts';
import type { SectionWords } from './compose-section.ts';
import type { SectionKeyWords } from './section-key.ts';

/** All words that the figure prints, in the page's language. */
export function sectionWords(shown: SectionView): SectionWords {
  const { voice } = shown.view;
  const keys = ['mean', 'individual', 'worn', 'bed', 'between'] as const;
  const key = Object.fromEntries(
    keys.map((row) => [
      row,
      { word: voice.say(`section.key.${row}`), note: voice.say(`section.key.${row}.note`) },
    ]),
  ) as SectionKeyWords; // one for each row
  const means = new Map(shown.levels.map((level) => [level.id, levelMean(shown, level)]));
  return {
    key,
    value: (level) => means.get(level) ?? '',
    axes: {
      unit: voice.say('unit.mm'),
      metres: voice.say('section.metres'),
      ma: voice.say('section.ma'),
      age: (ageMa) => voice.number(ageMa, 2).replace(/0$/, ''),
      bedAge: (ageMa, plusMinusMa) =>
        voice.say('value.plusMinus', { value: voice.number(ageMa, 2), error: voice.number(plusMinusMa, 2) }),
    },
  };
}

/** What the figure shows, in one paragraph. */
export function sectionDescription({ view, section, levels, name, trait }: SectionView): string {
  const worn = section.individuals.filter(({ atLeast }) => atLeast).length;
  return view.voice.say('section.description', {
    section: name,
    trait,
    levels: levels.length,
    unworn: section.individuals.length - worn,
    worn,
  });
}
