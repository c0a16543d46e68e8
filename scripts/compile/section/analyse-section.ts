import type { TraitScale } from '../../../analysis/traits/index.ts';
import type { Depth } from '../analyse/estimate-lineage-trait.ts';
import { findTraitKind, scaleOf } from '../analyse/trait-kind.ts';
import type { Report } from '../findings/report.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { Section } from '../schema/index.ts';
import { answerOnce } from '../source/remember.ts';
import { changesBetween, type DatedSummary, type LevelChange } from './change-rates.ts';
import { dateLevels, type LevelAges } from './date-levels.ts';
import { warnOfThinSections } from './section-findings.ts';
import { summariseLevels, type SharedSpread, type SummarisedLevel } from './summarise-levels.ts';
import { weighModels, type WeighedSection } from './weigh-models.ts';

/** Exact rank tests take most of it, and an edit of a text changes nothing in them. */
const weighOnce = answerOnce<WeighedSection>(8);

/** A section with everything computed, on the scale of its trait. */
export interface AnalysedSection {
  readonly section: Section;
  readonly scale: TraitScale;
  readonly levels: readonly SummarisedLevel[];
  readonly spread: SharedSpread | undefined;
  readonly dated: LevelAges;
  readonly weighed: WeighedSection;
  readonly changes: { readonly whole: LevelChange | undefined; readonly steps: readonly LevelChange[] };
}

/**
 * Computes levels, ages, models and rates; what is missing for them is told. Undefined
 * without a section, and in a check, which only looks for mistakes.
 */
export function analyseSection(
  lineage: ResolvedLineage,
  report: Report,
  depth: Depth,
): AnalysedSection | undefined {
  const { section: resolved } = lineage;
  const kind = resolved && findTraitKind(resolved.trait);
  if (!kind) return undefined;
  const { record, trait } = resolved;
  const scale = scaleOf(trait, kind);
  const where = record.at(['id']);
  const { levels, spread } = summariseLevels(resolved.levels, resolved.individuals, scale);
  warnOfThinSections(levels, spread, where, report);
  const used = new Set(resolved.individuals.map(({ level }) => level));
  const dated = dateLevels(resolved.levels, lineage.horizonAges, used, { where, report });
  if (depth === 'check') return undefined;
  const series = levels.flatMap((summarised): DatedSummary[] => {
    const age = dated.ages.get(summarised.level.id);
    return age && summarised.summary ? [{ summarised, age }] : [];
  });
  const { generation } = record.value;
  const generationYears = generation?.source === undefined ? undefined : generation.years;
  return {
    section: record.value,
    scale,
    levels,
    spread,
    dated,
    weighed: weighOnce(JSON.stringify([dated.ages.size, seriesOf(series)]), () =>
      weighModels(seriesOf(series), dated.ages.size === 0),
    ),
    changes: changesBetween(series, dated.beds, generationYears),
  };
}

/** Levels as the models take them: time since the oldest, mean, variance among individuals, and their number. */
function seriesOf(series: readonly DatedSummary[]) {
  const oldestMa = series[0]?.age.ageMa ?? 0;
  return series.map(({ summarised: { summary }, age }) => ({
    elapsedMyr: oldestMa - age.ageMa,
    mean: summary!.mean,
    variance: summary!.variance,
    n: summary!.n,
  }));
}
