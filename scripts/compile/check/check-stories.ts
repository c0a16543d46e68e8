import { specimenLabel } from '../compose/specimen-label.ts';
import { didYouMean } from '../findings/suggest.ts';
import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import { wholeFile } from '../source/source-text.ts';
import { checkStory } from './story/check-story.ts';
import { proseRules } from './story/check-prose.ts';
import type { Known } from './known.ts';
import { tellUnlisted } from './texts.ts';

/** Checks the story of every language, and tells of a language that has none. */
export function checkStories(records: LineageRecords, known: Known, report: Report): void {
  const languages = records.lineage?.value.languages ?? [...records.stories.keys()];
  const labels = records.specimens.records.map(({ value }) => specimenLabel(value));
  const pictures = new Set(
    records.specimens.records.flatMap(({ value }) => value.pictures.map(({ file }) => file)),
  );
  for (const [language, source] of records.stories) {
    const complete = languages.every((each) => records.stories.has(each));
    if (!languages.includes(language) && records.lineage && complete)
      tellUnlisted(language, records.lineage, report);
    else if (!languages.includes(language)) {
      report.add(
        'unknown-language',
        wholeFile(source),
        `a story in "${language}", which is no language of this lineage${didYouMean(language, languages)}`,
        'add it to languages in lineage.yaml, or rename the file',
      );
    }
    checkStory(source, known, proseRules(language, labels, traitWords(records, language)), pictures, report);
  }
  checkMissing(records, report);
}

/** A page without a story is whole but for it, and says so: a warning. */
function checkMissing({ lineage, stories }: LineageRecords, report: Report): void {
  if (!lineage) return;
  const { languages } = lineage.value;
  const missing = languages.filter((language) => !stories.has(language));
  if (missing.length === 0) return;
  const none = missing.length === languages.length;
  for (const language of none ? missing.slice(0, 1) : missing)
    report.add(
      'story-missing',
      lineage.at(['languages', languages.indexOf(language)]),
      none ? 'there is no story' : `there is no story in "${language}"`,
      `add story.${language}.mdx; until then the page says that its story is missing, and shows figure, values and evidence`,
    );
}

/** The labels of traits in a language: a number word beside one is most likely a result. */
function traitWords(records: LineageRecords, language: string): string[] {
  return records.traits.records.flatMap(({ value }) => value.label[language]?.toLowerCase() ?? []);
}
