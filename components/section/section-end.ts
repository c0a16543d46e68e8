import type { SectionLevel, SectionView } from './section-view.ts';
import { levelName } from './section-view.ts';

/** What would change what is said of a section: one sentence each, from its records alone. */
export function sectionMinds({ view: { voice }, section }: SectionView): string[] {
  const worn = section.individuals.filter(({ atLeast }) => atLeast).length;
  const told = section.verdict.code !== 'cannot-tell';
  return [
    voice.say(told ? 'section.minds.other' : 'section.minds.more'),
    voice.say('section.minds.dates_', { count: section.beds.length }),
    ...(worn > 0 ? [voice.say('section.minds.worn_', { count: worn })] : []),
  ];
}

/** What the rocks of a section leave out, counted from its records. */
export function sectionGaps(shown: SectionView): string[] {
  const { view, section, levels } = shown;
  const { voice } = view;
  const widest = widestGap(levels);
  return [
    voice.say('section.gaps.rests', { individuals: section.individuals.length, levels: levels.length }),
    ...(widest
      ? [
          voice.say('section.gaps.widest', {
            from: levelName(shown, widest.lower.id),
            to: levelName(shown, widest.upper.id),
            metres: voice.number(widest.upper.heightM - widest.lower.heightM, 1),
          }),
        ]
      : []),
    voice.say('section.gaps.place'),
    voice.say('section.gaps.ends'),
  ];
}

/** The two neighbouring levels with most rock between them; undefined with fewer than two levels. */
function widestGap(
  levels: readonly SectionLevel[],
): { lower: SectionLevel; upper: SectionLevel } | undefined {
  return levels
    .slice(1)
    .map((upper, index) => ({ lower: levels[index]!, upper }))
    .sort((a, b) => b.upper.heightM - b.lower.heightM - (a.upper.heightM - a.lower.heightM))[0];
}
