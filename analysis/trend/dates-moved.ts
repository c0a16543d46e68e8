import { weighSection, type NoSection } from './fit-section.ts';
import type { SectionLevel, SectionModelName } from './section.ts';

const joint = { form: 'joint', pooled: true } as const;

/** What sampled dates do to the weight of one model. */
export interface MovedWeight {
  readonly name: SectionModelName;
  /** Least and greatest weight over all sets of dates. */
  readonly least: number;
  readonly greatest: number;
  /** Sets in which it has the greatest weight, and in which it has enough to be named. */
  readonly leads: number;
  readonly named: number;
}

/** Weights of the three models of the joint form over sampled dates. */
export interface DatesMoved {
  /** Sets of dates that could be fitted. */
  readonly sets: number;
  readonly weights: readonly MovedWeight[];
}

/**
 * Refits the joint models to a section at each numbered set of dates: what the errors of the dates can do to the
 * weights, to be told beside them and never mixed in. A set in which two levels have one age is passed over; undefined
 * where no set gives weights.
 */
export function datesMoved(question: {
  readonly levels: readonly SectionLevel[];
  /** Time since the oldest level in a set of dates, Myr, in the order of the levels. */
  readonly elapsedOfDraw: (draw: number) => readonly number[];
  readonly draws: number;
  /** Weight that a model needs to be named. */
  readonly leastWeight: number;
}): DatesMoved | undefined {
  const { levels, elapsedOfDraw, draws, leastWeight } = question;
  const found = new Map<SectionModelName, number[]>();
  const near = variancesOf(levels);
  let sets = 0;
  for (let draw = 0; draw < draws; draw++) {
    const elapsed = elapsedOfDraw(draw);
    const weights = weightsOf(
      levels.map((level, k) => ({ ...level, elapsedMyr: elapsed[k]! })),
      near,
    );
    if (typeof weights === 'string') continue;
    sets += 1;
    for (const [name, weight] of weights) found.set(name, [...(found.get(name) ?? []), weight]);
  }
  if (sets === 0) return undefined;
  const all = [...found.values()];
  return {
    sets,
    weights: [...found].map(([name, own]) => ({
      name,
      least: Math.min(...own),
      greatest: Math.max(...own),
      leads: own.filter((weight, set) => all.every((other) => other[set]! <= weight)).length,
      named: own.filter((weight) => weight >= leastWeight).length,
    })),
  };
}

/** Variances of the models at the reference dates, where the search for the others begins. */
function variancesOf(levels: readonly SectionLevel[]): Map<SectionModelName, number> {
  const models = weighSection(levels, joint);
  return new Map(typeof models === 'string' ? [] : models.map(({ name, variance }) => [name, variance]));
}

function weightsOf(
  levels: readonly SectionLevel[],
  near: ReadonlyMap<SectionModelName, number>,
): [SectionModelName, number][] | NoSection | 'no-weights' {
  const models = weighSection(levels, joint, near);
  if (typeof models === 'string') return models;
  if (models.some(({ weight }) => weight === null)) return 'no-weights';
  return models.map(({ name, weight }) => [name, weight!]);
}
