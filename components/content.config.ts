import { defineCollection } from 'astro:content';
import { glob } from 'astro/loaders';
import { z } from 'astro/zod';
import { lineageLoader, storyId } from '../scripts/astro-adapter.ts';
import { contentFolder } from '../scripts/options.ts';

/** `lineages` are compiled values by digest; `stories` are the authors' MDX, one a language: `reed-trunks/en`. */
export const collections = {
  lineages: defineCollection({ loader: lineageLoader() }),
  stories: defineCollection({
    loader: glob({
      base: contentFolder(),
      pattern: '*/story.*.mdx',
      generateId: ({ entry }) => storyId(entry),
    }),
    schema: z.object({}),
  }),
};
