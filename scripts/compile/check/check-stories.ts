import { specimenLabel } from '../compose/specimen-label.ts';
import { didYouMean } from '../findings/suggest.ts';
import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import { wholeFile } from '../source/source-text.ts';
import { checkStory } from './story/check-story.ts';
import { proseRules } from './story/check-prose.ts';
import type { Known } from './known.ts';

/** Checks the story of every language, and that there is one for each language once there is any. */
export function checkStories(records: LineageRecords, known: Known, report: Report): void {
  const languages = records.lineage?.value.languages ?? [...records.stories.keys()];
  const labels = records.specimens.records.map(({ value }) => specimenLabel(value));
  const pictures = new Set(
    records.specimens.records.flatMap(({ value }) => value.pictures.map(({ file }) => file)),
  );
  for (const [language, source] of records.stories) {
    if (!languages.includes(language)) {
      report.add(
        'unknown-language',
        wholeFile(source),
        `a story in "${language}", which is no language of this lineage${didYouMean(language, languages)}`,
        'add it to languages in lineage.yaml, or rename the file',
      );
    }
    checkStory(source, known, proseRules(language, labels, traitWords(records, language)), pictures, report);
  }
  if (records.stories.size === 0) return;
  for (const language of languages) {
    if (records.stories.has(language) || !records.lineage) continue;
    report.add(
      'story-missing',
      records.lineage.at(['languages']),
      `there is no story in "${language}"`,
      `add story.${language}.mdx, or take the language off the list`,
    );
  }
}

/** The labels of traits in a language: a number word beside one is most likely a result. */
function traitWords(records: LineageRecords, language: string): string[] {
  return records.traits.records.flatMap(({ value }) => value.label[language]?.toLowerCase() ?? []);
}
