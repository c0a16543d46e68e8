import type { SectionLevel } from './section-view.ts';

/** The level that a page opens with: the first that a step of its story asks for, else the lowest that has a mean. */
export function firstLevel(story: string, levels: readonly SectionLevel[]): string {
  const ids = new Set(levels.map(({ id }) => id));
  const asked = [...story.matchAll(/<Step\b[^>]*\bfocus="([^"]*)"/g)].flatMap((match) =>
    match[1]!.split(/\s+/),
  );
  const withMean = levels.find(({ estimate }) => estimate !== null) ?? levels[0];
  return asked.find((id) => ids.has(id)) ?? withMean?.id ?? '';
}
