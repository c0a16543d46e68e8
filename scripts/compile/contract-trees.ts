import { z } from 'zod';

/* The part of the compiled lineage that is trees in time; `contract.ts` is the whole. */

const treeNode = z.object({
  id: z.string(),
  parent: z.string().nullable(),
  ageMa: z.number(),
  taxon: z.string().optional(),
});

/** A tree, dated for the trait that the pages open with. */
export const tree = z.object({
  id: z.string(),
  reference: z.boolean(),
  source: z.string().optional(),
  dating: z.string(),
  nodes: z.array(treeNode),
});
