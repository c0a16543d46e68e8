import { z } from 'zod';
import { texts } from './contract-words.ts';

/* The part of the compiled lineage that is features in separate states; `contract.ts` is the whole. */

const change = z.object({
  node: z.string().describe('the younger end of the branch, in the reference tree'),
  from: z.array(z.string()).describe('states above the change; several where the shortest histories differ'),
  to: z.array(z.string()),
});

/** A character on the reference tree. */
export const character = z.object({
  id: z.string(),
  label: texts,
  states: z.array(z.object({ id: z.string(), label: texts })),
  ordered: z.boolean(),
  scored: z.array(z.object({ taxon: z.string(), states: z.array(z.string()) })),
  sources: z.array(z.string()),
  steps: z.number().nullable().describe('fewest changes on the reference tree; null without a tree'),
  changes: z.array(change).describe('branches on which every shortest history has a change'),
});
export type CompiledCharacter = z.output<typeof character>;
