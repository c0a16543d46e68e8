import type { Report } from '../findings/report.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import { checkAnimals } from './animals.ts';
import { checkBreaks } from './breaks.ts';
import { checkDigitised, checkTurnedAxes } from './digitised.ts';
import { checkDigitisedViews } from './digitised-views.ts';
import { checkReadings } from './readings.ts';
import { checkAges } from './resolved-ages.ts';
import { checkTreatments } from './treatments.ts';
import { checkUnitSlips } from './unit-slips.ts';

/** Checks what can be said once tables are joined to specimens and ages are worked out. */
export function checkResolved(lineage: ResolvedLineage, report: Report): void {
  checkAges(lineage, report);
  checkBreaks(lineage, report);
  checkTreatments(lineage, report);
  checkAnimals(lineage, report);
  checkDigitised(lineage, report);
  checkDigitisedViews(lineage, report);
  checkTurnedAxes(lineage, report);
  checkReadings(lineage, report);
  checkUnitSlips(lineage, report);
}
