import { z } from 'zod';
import { texts } from './contract-words.ts';

/** One edition of a lineage, and what changed in it. */
export const edition = z.object({
  number: z.number(),
  date: z.string(),
  status: z.string().describe('draft, in-review, signed or withdrawn, as a code'),
  changes: z
    .array(
      z.object({
        reason: z.string().describe('first, new-evidence, correction, wording or method, as a code'),
        text: texts,
      }),
    )
    .describe('in the author’s words'),
});

export type CompiledEdition = z.output<typeof edition>;
