import type { CompiledTrait } from '../../scripts/compile/contract.ts';

/** What a page must know of its story before it renders it. */
export interface StoryPlan {
  steps: number;
  /** The animal that the page opens with. */
  first: string;
  /** Ages at which steps slice the tree, in Ma. */
  slices: number[];
}

/**
 * Reads steps, first focus and slices from the MDX of a story. Without a story the page opens with the living ingroup
 * animal of the greatest value, or the first value there is.
 */
export function storyPlan(body: string, trait: CompiledTrait): StoryPlan {
  const steps = [...body.matchAll(/<Step\b([^>]*)>/g)].map((match) => match[1] ?? '');
  const attribute = (text: string, name: string) =>
    new RegExp(`\\b${name}=(?:"([^"]*)"|\\{([^}]*)\\})`).exec(text)?.slice(1).find(Boolean);
  const slices = steps.map((step) => Number(attribute(step, 'age'))).filter((age) => Number.isFinite(age));
  const opening = /<(?:Name|Value|Age)\b[^>]*\bof="([^"]+)"/.exec(body.split('<Step')[0] ?? '')?.[1];
  const firstFocus = attribute(steps[0] ?? '', 'focus')?.split(/\s+/)[0];
  const measured = trait.values.filter((value) => value.status === 'measured');
  const highest = [...measured].sort((a, b) => b.estimate! - a.estimate!)[0] ?? trait.values[0];
  return {
    steps: steps.length,
    first: opening ?? firstFocus ?? highest?.taxon ?? '',
    slices: [...new Set(slices)],
  };
}
