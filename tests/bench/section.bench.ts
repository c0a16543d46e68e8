import { expect, test } from 'vitest';
import { analyseSection } from '../../scripts/compile/section/analyse-section.ts';
import { resolveSection } from '../../scripts/compile/section/resolve-section.ts';
import { composeSection } from '../../scripts/compile/section/compose-section.ts';
import { openReport } from '../../scripts/compile/findings/report.ts';
import { largeSection } from './large-section.ts';

/** Runs, of which the median and both quartiles are printed. */
const runs = 15;

/** Minutes that a measurement may take on a slow machine. */
const timeout = 10 * 60_000;

test('a section of 200 levels and 20,000 individuals, from its tables to its verdict', { timeout }, () => {
  const times: number[] = [];
  let verdict = '';
  for (let run = 0; run < runs; run++) {
    // A section of its own for each run: what was weighed once is remembered.
    const { records, lineage } = largeSection(200, 100, run);
    const report = openReport();
    const start = performance.now();
    const section = resolveSection(records, report);
    const analysed = analyseSection(
      { ...lineage, section },
      { seed: 1, ageDraws: 200 },
      { report, depth: 'whole' },
    );
    verdict = composeSection(analysed!, lineage).verdict.code;
    times.push(performance.now() - start);
    expect(report.list()).toEqual([]);
  }
  const sorted = times.toSorted((a, b) => a - b);
  const [low, median, high] = [3, 7, 11].map((at) => sorted[at]!.toFixed(0));
  console.log(
    `20,000 individuals in 200 levels, ${verdict}: median ${median} ms, quartiles ${low} to ${high} ms, first ${times[0]!.toFixed(0)} ms`,
  );
});
