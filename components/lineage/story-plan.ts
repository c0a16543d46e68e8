import type { CompiledTrait } from '../../scripts/compile/contract.ts';

/** What a page must know of its story before it renders it. */
export interface StoryPlan {
  steps: number;
  /** The animal that the page opens with. */
  first: string;
  /** Ages at which steps slice the tree, in Ma. */
  slices: number[];
  /** Intervals that steps show: older and younger end, in Ma. */
  intervals: (readonly [number, number])[];
  /** Branches that steps show with their ribbons, as the steps name them. */
  branches: string[];
  /** What each step focuses, in the order of the story. */
  focus: string[];
  /** Some step shows the table. */
  hasTable: boolean;
  /** Ids of the traits that steps and values bring into view beside the one that the page opens with. */
  traits: string[];
}

/**
 * Reads steps, first focus, slices, intervals and branches from the MDX of a story. Without a story the page opens with the living ingroup
 * animal of the greatest value, or the first value there is.
 */
export function storyPlan(body: string, trait: CompiledTrait): StoryPlan {
  const steps = [...body.matchAll(/<Step\b([^>]*)>/g)].map((match) => match[1] ?? '');
  const attribute = (text: string, name: string) =>
    new RegExp(`\\b${name}=(?:"([^"]*)"|\\{([^}]*)\\})`).exec(text)?.slice(1).find(Boolean);
  const traits = [...body.matchAll(/<(?:Step|Value)\b([^>]*)>/g)].flatMap(
    (match) => attribute(match[1] ?? '', 'trait') ?? [],
  );
  const slices = steps.map((step) => Number(attribute(step, 'age'))).filter((age) => Number.isFinite(age));
  const opening = /<(?:Name|Value|Age)\b[^>]*\bof="([^"]+)"/.exec(body.split('<Step')[0] ?? '')?.[1];
  const firstFocus = attribute(steps[0] ?? '', 'focus')
    ?.split(/\s+/)[0]
    ?.replace(/^(clade|branch):/, '')
    .split('+')[0];
  const measured = trait.values.filter((value) => value.status === 'measured');
  const highest = [...measured].sort((a, b) => b.estimate! - a.estimate!)[0] ?? trait.values[0];
  return {
    steps: steps.length,
    first: opening ?? firstFocus ?? highest?.taxon ?? '',
    slices: [...new Set(slices)],
    intervals: steps.flatMap((step) => {
      const [from, to] = [attribute(step, 'from'), attribute(step, 'to')];
      return from === undefined || to === undefined ? [] : [[Number(from), Number(to)] as const];
    }),
    branches: [
      ...new Set(
        steps.flatMap((step) =>
          (attribute(step, 'focus') ?? '').split(/\s+/).filter((word) => word.startsWith('branch:')),
        ),
      ),
    ],
    focus: steps.flatMap((step) => attribute(step, 'focus') ?? []),
    hasTable: steps.some((step) => attribute(step, 'show') === 'table'),
    traits: [...new Set(traits)].filter((id) => id !== trait.id),
  };
}
