import { z } from 'zod';

/* Shapes in the compiled lineage beside those of the animals themselves; `contract.ts` is the whole. */

const place = z.tuple([z.number(), z.number()]);

/** Restored points at the two ends of what is known of a value. */
export const restorationEnds = z
  .array(
    z.object({
      value: z.number().describe('what the skull would read'),
      points: z.record(z.string(), place).describe('restored landmarks; the others stay where they are'),
    }),
  )
  .describe('restored points at the lowest and at the highest value that limit and bracket allow');

/** Shapes along the reference tree, in the frame of the measured line. */
export const shapes = z.object({
  trait: z.string(),
  tree: z.string(),
  template: z.string().optional().describe('of `templates`, that the points give its shape'),
  landmarks: z.array(z.string()),
  nodes: z
    .array(
      z.object({
        node: z.string(),
        at: z
          .array(z.number())
          .describe('x and y of each landmark in turn; between nodes they run straight in time'),
      }),
    )
    .describe('every fork and every animal of the tree'),
});
