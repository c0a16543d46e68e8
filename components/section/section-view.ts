import type { CompiledLineage, CompiledSection } from '../../scripts/compile/contract.ts';
import {
  levelsWithIndividuals,
  normalReach,
  sectionFigure,
  type SectionFigure,
} from '../figures/section/section-data.ts';
import type { LineageView } from '../lineage/view.ts';
import { decimalsOfError, halfWidthOf } from '../../analysis/statements/index.ts';

export type SectionLevel = CompiledSection['levels'][number];

/** A sampled section as one page sees it: in one language. */
export interface SectionView {
  view: LineageView;
  section: CompiledSection;
  figure: SectionFigure;
  /** Levels that hold individuals, from the base up. */
  levels: SectionLevel[];
  name: string;
  trait: string;
}

/** Whether a lineage is one section and nothing else: it has no tree to stand on. */
export function isSectionOnly({ section, trees }: CompiledLineage): boolean {
  return section !== undefined && trees.length === 0;
}

/** The view of the section of a lineage; undefined where it has none. */
export function findSectionView(view: LineageView): SectionView | undefined {
  const { section } = view.lineage;
  if (!section) return undefined;
  const figure = sectionFigure(view.lineage, section, (texts) => view.text(texts));
  return {
    view,
    section,
    figure,
    levels: levelsWithIndividuals(section),
    name: view.text(section.name),
    trait: figure.label,
  };
}

/** `Level 7`, counted from the base. Throws for a level that is not there or holds no individual. */
export function levelName({ view, levels }: SectionView, id: string): string {
  const index = levels.findIndex((level) => level.id === id);
  if (index < 0) throw new Error(`unknown level: "${id}"`);
  return view.voice.say('section.level', { number: index + 1 });
}

/** Mean of a level rounded to its error, `11.3 ± 0.2`; `not known` without one. */
export function levelMean({ view: { voice } }: SectionView, level: SectionLevel): string {
  if (level.estimate === null) return voice.say('value.unknown');
  const decimals = meanDecimals(level);
  const value = voice.number(level.estimate, decimals);
  const error = halfWidthOf(level.interval);
  if (error === undefined) return value;
  return voice.say('value.plusMinus', { value, error: voice.number(error, decimals) });
}

/** Decimals of a mean: those that its error supports, one where it has none. */
export function meanDecimals(level: Pick<SectionLevel, 'interval'>): number {
  const error = halfWidthOf(level.interval);
  return error === undefined ? 1 : decimalsOfError(error);
}

/** Age of a level with half of its 95% interval, `17.13 ± 0.05`; undefined outside the dated beds. */
export function findLevelAge({ view: { voice } }: SectionView, level: SectionLevel): string | undefined {
  if (level.ageMa === null || level.ageSigmaMa === null) return undefined;
  const error = voice.number(normalReach * level.ageSigmaMa, 2);
  return voice.say('value.plusMinus', { value: voice.number(level.ageMa, 2), error });
}

/** Age of a level in a sentence: `17.13 ± 0.05 million years ago`. */
export function levelAgeWords(shown: SectionView, level: SectionLevel): string {
  const age = findLevelAge(shown, level);
  const { voice } = shown.view;
  return age === undefined ? voice.say('section.noAge') : voice.say('section.age', { age });
}

/** Id of the row of a level in the table, for links. */
export function levelAddress(id: string): string {
  return `level-${id}`;
}
