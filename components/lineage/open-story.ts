import { getEntry, render } from 'astro:content';
import { storyPlan, type StoryPlan } from './story-plan.ts';
import type { LineageView } from './view.ts';

/** The story of a lineage in the language of its page. */
export interface Story {
  /** Its source; empty where there is none in this language. */
  body: string;
  plan: StoryPlan;
  Content: Awaited<ReturnType<typeof render>>['Content'] | undefined;
}

/** Opens the story of a page; without one, a plan of the figure alone. */
export async function openStory(view: LineageView): Promise<Story> {
  const entry = await getEntry('stories', `${view.lineage.lineage}/${view.language}`);
  const body = entry?.body ?? '';
  return { body, plan: storyPlan(body, view.trait), Content: entry && (await render(entry)).Content };
}
