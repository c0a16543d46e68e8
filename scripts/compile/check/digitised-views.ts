import type { Report } from '../findings/report.ts';
import type { Digitising } from '../resolve/digitising.ts';
import type { SheetPoint } from '../resolve/landmark-sheet.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import { shareView, type SchemeIndex } from '../resolve/scheme-index.ts';
import type { Span } from '../source/source-text.ts';

/** Points have as many coordinates as their view has dimensions, and are of landmarks that their view shows. */
export function checkDigitisedViews({ specimens, scheme }: ResolvedLineage, report: Report): void {
  // Views that are wrong in the scheme are told there.
  if ([...scheme.measurements.values()].some((each) => !shareView(each, scheme.landmarks))) return;
  const told = new Set<string>();
  for (const { record, digitisings } of specimens) {
    for (const digitising of digitisings) {
      const { view, sheet } = digitising.source;
      const fits = checkDimensions(digitising, record.at([...digitising.path, 'view']), report);
      if (!fits || !scheme.views.has(view) || told.has(`${sheet}\0${view}`)) continue;
      if (checkShown(digitising, scheme, report)) told.add(`${sheet}\0${view}`);
    }
  }
}

/** Landmarks that the view does not show are told once for a sheet; true when there are any. */
function checkShown(digitising: Digitising, { landmarks }: SchemeIndex, report: Report): boolean {
  const { view } = digitising.source;
  const foreign = new Map(
    pointsOf(digitising).filter(([landmark]) => !(landmarks.get(landmark)?.views ?? [view]).includes(view)),
  );
  const [first] = foreign;
  if (!first) return false;
  const [landmark, { span }] = first;
  const others = foreign.size > 1 ? ` and ${foreign.size - 1} more are` : ' is';
  report.add(
    'views-mixed',
    span,
    `"${landmark}"${others} digitised in the view "${view}", where the scheme has no such landmark`,
    `add ${view} to the views of the landmark in scheme.yaml, or name the view that the sheet was digitised in`,
  );
  return true;
}

/** A sheet of another view is one mistake, told at the view; a coordinate left out is told at its point. True unless the whole sheet is wrong. */
function checkDimensions(digitising: Digitising, viewSpan: Span, report: Report): boolean {
  const points = pointsOf(digitising);
  const { dimensions, source } = digitising;
  const odd = points.filter(([, { at }]) => at.length !== dimensions);
  if (odd.length === 0) return true;
  if (dimensions === 2 || odd.length === points.length) {
    report.add(
      'sheet-shape',
      viewSpan,
      `the view "${source.view}" has ${dimensions === 2 ? 'two dimensions' : 'three dimensions'}, and points of "${source.sheet}" have ${dimensions === 2 ? 'x, y and z' : 'x and y alone'}`,
      'name the view that the sheet was digitised in, or give the view its dimensions in scheme.yaml',
    );
    return false;
  }
  for (const [landmark, { span }] of odd)
    report.add(
      'csv-row',
      span,
      `"${landmark}" has no z, and the view "${source.view}" has three dimensions`,
      'give every coordinate, or leave all of them empty for a point that is not there',
    );
  return true;
}

function pointsOf({ repeats }: Digitising): [string, SheetPoint][] {
  return repeats.flatMap((repeat) => [...repeat]);
}
