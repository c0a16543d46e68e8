import type { CompiledLineage, CompiledSection, Interval } from '../../../scripts/compile/contract.ts';

/** One level that holds individuals, as the figure shows it. */
export interface FigureLevel {
  id: string;
  /** Counted from the base, for people. */
  number: number;
  heightM: number;
  ageMa: number | null;
  estimate: number | null;
  interval: Interval;
  /** Heights in mm of crowns that are whole, and of worn ones, which were at least as high. */
  unworn: number[];
  worn: number[];
}

/** A dated bed: its height, its age and half of the 95% interval of that. */
export interface FigureBed {
  heightM: number;
  ageMa: number;
  plusMinusMa: number;
}

/** What the figure of a section shows, in one language. */
export interface SectionFigure {
  label: string;
  meaning: string;
  levels: FigureLevel[];
  beds: FigureBed[];
  rocks: CompiledSection['rocks'];
  baseM: number;
  topM: number;
  /** Greatest value on the axis, mm, a whole number above all. */
  endMm: number;
}

/** Half of a 95% interval of a normal error in standard deviations. */
export const normalReach = 1.959963984540054;

/** Picks the figure of a section from a compiled lineage that has one. */
export function sectionFigure(
  lineage: CompiledLineage,
  section: CompiledSection,
  text: (texts: Record<string, string> | undefined) => string,
): SectionFigure {
  const trait = lineage.traits.find(({ id }) => id === section.trait);
  const byLevel = Map.groupBy(section.individuals, ({ level }) => level);
  const levels = levelsWithIndividuals(section).map((level, index): FigureLevel => {
    const own = byLevel.get(level.id) ?? [];
    const heights = (worn: boolean) => own.flatMap((each) => (each.atLeast === worn ? each.valueMm : []));
    const { id, heightM, ageMa, estimate, interval } = level;
    return {
      id,
      number: index + 1,
      heightM,
      ageMa,
      estimate,
      interval,
      unworn: heights(false),
      worn: heights(true),
    };
  });
  const heights = [
    ...section.levels.map(({ heightM }) => heightM),
    ...section.rocks.flatMap(({ from, to }) => [from, to]),
  ];
  const greatest = Math.max(1, ...section.individuals.map(({ valueMm }) => valueMm));
  return {
    label: text(trait?.label),
    meaning: text(trait?.meaning),
    levels,
    beds: section.beds.map(({ heightM, ageMa, sigmaMa }) => ({
      heightM,
      ageMa,
      plusMinusMa: normalReach * sigmaMa,
    })),
    rocks: section.rocks,
    baseM: Math.min(...heights),
    topM: Math.max(...heights),
    endMm: Math.ceil(greatest * 1.02),
  };
}

/** Levels that hold individuals, from the base up; the number of a level is its place among them. */
export function levelsWithIndividuals({ levels }: CompiledSection): CompiledSection['levels'] {
  return levels.filter(({ unworn, worn }) => unworn + worn > 0);
}
