import type { TraitScale } from '../../../analysis/traits/index.ts';
import type { Depth } from '../analyse/estimate-lineage-trait.ts';
import { findTraitKind, scaleOf } from '../analyse/trait-kind.ts';
import type { Report } from '../findings/report.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import type { AuthoredLineage, Section } from '../schema/index.ts';
import { answerOnce } from '../source/remember.ts';
import type { DatesMoved } from '../../../analysis/trend/index.ts';
import { changesBetween, findSectionSpan, type DatedSummary, type LevelChange } from './change-rates.ts';
import { dateLevels, type LevelAges } from './date-levels.ts';
import { ratesOfSection, type SectionRates } from './level-rates.ts';
import { weighOverDates } from './redate.ts';
import { warnOfThinSections } from './section-findings.ts';
import { summariseLevels, type SharedSpread, type SummarisedLevel } from './summarise-levels.ts';
import { weighModels, type WeighedSection } from './weigh-models.ts';

/** Exact rank tests and sampled dates take most of it, and an edit of a text changes nothing in them. */
const answer = answerOnce<Pick<AnalysedSection, 'weighed' | 'moved' | 'rates'>>(8);

/** A section with everything computed, on the scale of its trait. */
export interface AnalysedSection {
  readonly section: Section;
  readonly scale: TraitScale;
  readonly levels: readonly SummarisedLevel[];
  readonly spread: SharedSpread | undefined;
  readonly dated: LevelAges;
  readonly weighed: WeighedSection;
  /** The weights over sampled dates of the beds; they stand beside the weights and never in them. */
  readonly moved: DatesMoved | undefined;
  readonly rates: SectionRates | undefined;
  readonly span: ReturnType<typeof findSectionSpan>;
  readonly changes: { readonly whole: LevelChange | undefined; readonly steps: readonly LevelChange[] };
}

/**
 * Computes levels, ages, models and, for a length on log scale, rates; what is missing for them is told. Undefined
 * without a section, and in a check, which only looks for mistakes.
 */
export function analyseSection(
  lineage: ResolvedLineage,
  settings: Pick<AuthoredLineage['estimate'], 'seed' | 'ageDraws'>,
  { report, depth }: { readonly report: Report; readonly depth: Depth },
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
  const taken = seriesOf(series);
  const grounds = { beds: dated.beds, horizonAges: lineage.horizonAges };
  return {
    section: record.value,
    scale,
    levels,
    spread,
    dated,
    ...answer(
      JSON.stringify([taken, series.map(({ age }) => age), bedsOf(lineage, dated), settings, scale]),
      () => ({
        weighed: weighModels(taken, undatedBy(dated)),
        moved: weighOverDates(taken, series, { ...grounds, ...settings, draws: settings.ageDraws }),
        rates: ratesOfSection(series, taken, { scale: scale.kind, seed: settings.seed }),
      }),
    ),
    span: findSectionSpan(series, dated.beds),
    changes: changesBetween(scale.kind === 'log' ? series : [], dated.beds, generationYears),
  };
}

/** Why no level has an age: too few dated beds, or dates that do not part them in order. */
function undatedBy({ ages, beds }: LevelAges): 'no-ages' | 'dates-astray' | undefined {
  if (ages.size > 0) return undefined;
  return beds.length < 2 ? 'no-ages' : 'dates-astray';
}

/** Dated beds with what is known of their ages. */
function bedsOf({ horizonAges }: ResolvedLineage, { beds }: LevelAges) {
  return beds.map(({ heightM, level }) => [
    level.id,
    heightM,
    level.horizon,
    horizonAges.get(level.horizon!),
  ]);
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
