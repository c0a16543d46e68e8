import { z } from 'zod';
import { texts } from './contract-words.ts';

/* The part of the compiled lineage that is features in separate states; `contract.ts` is the whole. */

const change = z.object({
  node: z.string().describe('the younger end of the branch, in the reference tree'),
  from: z.array(z.string()).describe('states above the change; several where the shortest histories differ'),
  to: z.array(z.string()),
});

const fit = z.object({
  minimum: z.number().describe('fewest changes on any tree'),
  maximum: z.number().describe('most changes on any tree'),
  consistency: z.number().nullable().describe('fewest over these on this tree'),
  retention: z.number().nullable().describe('null for a character that fits every tree alike'),
});

const changeRate = z.object({
  perMyr: z.number().nullable().describe('to each other state; null where changes are without end'),
  logLikelihood: z.number(),
  onBound: z.enum(['no-change', 'no-end']).optional(),
  forks: z
    .array(z.object({ node: z.string(), shares: z.array(z.number()) }))
    .describe('probability of each state, in their order; none where changes are without end'),
});

const bracket = z.object({
  taxon: z.string(),
  sides: z
    .array(
      z.object({
        fork: z.string(),
        living: z.array(z.string()),
        has: z.boolean().nullable().describe('null where it is not known, or they differ'),
      }),
    )
    .describe('nearest living relatives, the nearer side first; fewer than two bracket nothing'),
  sign: z.boolean().nullable().describe('whether its bones bear the mark of the part; null if not scored'),
  readings: z
    .array(
      z.object({
        level: z.enum(['I', 'II', 'III']),
        prime: z.boolean(),
        verdict: z.enum(['decisive positive', 'equivocal', 'decisive negative']),
      }),
    )
    .describe('every level that what is not known leaves open, strongest first'),
});

/** How all unordered characters together go with the reference tree; those that tell no tree from another are left out. */
export const matrixFit = fit.extend({
  characters: z.number().describe('informative ones, which the sums are over'),
  steps: z.number(),
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
  fit: fit.optional().describe('of an unordered character, on the reference tree'),
  rate: changeRate
    .optional()
    .describe(
      'likeliest rate where every change is alike, on the reference tree; left out where tree and matrix are very large',
    ),
  softPart: z
    .object({
      state: z.string().describe('the state of having it'),
      sign: z.object({ character: z.string(), state: z.string() }).optional(),
      brackets: z
        .array(bracket)
        .describe('of every fossil of the reference tree that does not show the part'),
    })
    .optional(),
});
export type CompiledCharacter = z.output<typeof character>;
