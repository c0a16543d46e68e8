import { z } from 'zod';
import { picture } from './contract-pictures.ts';
import { texts } from './contract-words.ts';

/* The part of the compiled lineage that was found and recorded; `contract.ts` is the whole. */

const age = z.object({
  from: z.number().describe('older end, Ma'),
  to: z.number().describe('younger end, Ma'),
  text: z.string().describe('the two ends with the digits the author wrote'),
  basis: z.enum(['dated', 'bracketed', 'stage', 'living']),
});

/** An animal: its names, when it was found, and its specimens. */
export const taxon = z.object({
  id: z.string(),
  name: z.string().describe('scientific name, without authorship'),
  authorship: z.string().optional(),
  vernacular: texts.optional(),
  living: z.boolean(),
  role: z.enum(['ingroup', 'outgroup', 'comparator']),
  note: texts.optional(),
  finds: z.object({
    first: z.number().nullable().describe('older end of the oldest horizon, Ma'),
    last: z.number().nullable().describe('younger end of the youngest horizon, Ma; 0 when living'),
    horizons: z.array(z.string()),
    lastLimit: z
      .object({ youngestMa: z.number(), level: z.number() })
      .optional()
      .describe('how long it may have lived past its last find, if finds fall at random through its time'),
  }),
  age: age.nullable(),
  inTree: z.boolean(),
  specimens: z.array(z.string()),
  sources: z.array(z.string()),
});

/** A bed and its age. */
export const horizon = z.object({
  id: z.string(),
  formation: z.string(),
  bed: z.string().optional(),
  age,
  sources: z.array(z.string()),
});

/** How a bed stands to the next younger one: known from their section, or as likely as their ages make it. */
export const bedOrder = z.object({
  older: z.string(),
  younger: z.string(),
  known: z.boolean().describe('one lies over the other in a section'),
  probability: z.number().describe('that the first is the older'),
});

const specimenValue = z.object({
  trait: z.string(),
  value: z.number(),
  standardError: z.number().nullable().describe('error of the reading, trait units'),
  readings: z.number().int().describe('how many repeats the value rests on'),
  part: z.object({ measurement: z.string(), mm: z.number() }).optional(),
  whole: z.object({ measurement: z.string(), mm: z.number() }).optional(),
  approximate: z.boolean(),
});

/** One specimen with every value that it yields. */
export const specimen = z.object({
  id: z.string(),
  taxon: z.string(),
  label: z.string().describe('institution code and catalogue number'),
  typeStatus: z.string().optional(),
  kind: z.enum(['fossil', 'recent', 'cast', 'mould', 'model']),
  castOf: z.string().optional(),
  horizon: z.string().nullable(),
  age: age.nullable(),
  lifeStage: z.string(),
  elements: z.array(z.object({ element: z.string(), side: z.string().optional(), preserved: z.number() })),
  lost: z.array(z.string()).describe('landmarks lost at a break'),
  mirrored: z.boolean(),
  sources: z.array(z.string()),
  values: z.array(specimenValue),
  pictures: z.array(picture).optional(),
});

/** A source, as printed. */
export const reference = z.object({
  key: z.string(),
  short: z.string().describe('author and year, for a line of text'),
  full: z.string().describe('one line of a reference list'),
  url: z.string().optional(),
});
