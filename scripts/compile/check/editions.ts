import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';

/** Editions have numbers of their own, and a later number has no earlier day; a language is listed once. */
export function checkEditions({ lineage }: LineageRecords, report: Report): void {
  if (!lineage) return;
  const { editions, languages } = lineage.value;
  languages.forEach((language, index) => {
    if (languages.indexOf(language) === index) return;
    report.add(
      'duplicate-id',
      lineage.at(['languages', index]),
      `the language "${language}" is listed twice`,
      'remove it once',
    );
  });
  editions.forEach(({ number, date }, index) => {
    if (editions.findIndex((each) => each.number === number) < index)
      report.add(
        'duplicate-id',
        lineage.at(['editions', index, 'number']),
        `the edition ${number} is given twice`,
        'number editions in the order in which they came out',
      );
    const later = editions.find((each) => each.number < number && each.date > date);
    if (later)
      report.add(
        'wrong-value',
        lineage.at(['editions', index, 'date']),
        `edition ${number} is of ${date}, and edition ${later.number} of ${later.date}`,
        'a later edition has a later number: correct a day or a number',
      );
  });
}
