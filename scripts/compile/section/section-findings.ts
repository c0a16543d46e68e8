import type { Report } from '../findings/report.ts';
import type { Span } from '../source/source-text.ts';
import type { SharedSpread, SummarisedLevel } from './summarise-levels.ts';

/** Tells of levels too few or too thin to compare, and of a section in which nothing varies. */
export function warnOfThinSections(
  levels: readonly SummarisedLevel[],
  spread: SharedSpread | undefined,
  where: Span,
  report: Report,
): void {
  const used = levels.filter(({ individuals }) => individuals.length > 0);
  // Without any spread every level lacks it: that is told once, below.
  for (const each of used) if (spread || each.unworn === 0) warnOfThinLevel(each, report);
  const told = used.filter(({ summary }) => summary);
  if (told.length < 3)
    report.add(
      'levels-few',
      where,
      `${told.length} of the levels can be compared`,
      'three levels with unworn individuals are the least that the models need; with fewer one cannot tell',
    );
  if (!spread && told.length > 0)
    report.add(
      'section-no-variance',
      where,
      'no level shows how much its individuals differ',
      'measure two individuals or more of some level to a tenth of a millimetre; without a spread one cannot tell',
    );
}

function warnOfThinLevel({ level, unworn, worn }: SummarisedLevel, report: Report): void {
  if (unworn > 1) return;
  if (unworn === 0)
    report.add(
      'level-thin',
      level.span,
      `"${level.id}" has worn crowns only (${worn}), and so no mean`,
      'it is shown and takes no part in the models',
    );
  else
    report.add(
      'level-thin',
      level.span,
      `"${level.id}" has one unworn individual`,
      'its error is that of one animal, by the spread of the other levels',
    );
}
