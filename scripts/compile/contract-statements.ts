import { z } from 'zod';

/* The part of the compiled lineage that is said in words, as codes; `contract.ts` is the whole. */

/** One thing said: a code that a page turns into words by its messages, and what its sentence prints. */
export const statement = z.object({
  kind: z
    .enum(['value', 'place', 'limit', 'span', 'unknown', 'left-out', 'model', 'sensitivity', 'repeats'])
    .describe('what it speaks of'),
  taxon: z.string().optional().describe('left out where it speaks of the whole trait'),
  code: z.string(),
  args: z
    .record(z.string(), z.union([z.string(), z.number()]))
    .describe('ids, and numbers rounded to `decimals` places, or to those of `…Decimals`'),
  digest: z
    .string()
    .describe('16 hexadecimal digits of the SHA-256 of kind, trait, taxon, code and arguments'),
});
