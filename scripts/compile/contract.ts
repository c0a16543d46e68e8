import { edition } from './contract-editions.ts';
import { z } from 'zod';
import { character, matrixFit } from './contract-characters.ts';
import { completeness } from './contract-material.ts';
import { drawing, template } from './contract-drawings.ts';
import type { CompiledPicture } from './contract-pictures.ts';
import { bedOrder, horizon, reference, specimen, taxon } from './contract-records.ts';
import { scheme } from './contract-scheme.ts';
import { section } from './contract-section.ts';
import { trait } from './contract-traits.ts';
import { shapes } from './contract-shapes.ts';
import { tree } from './contract-trees.ts';
import { value } from './contract-values.ts';
import { congruence, ghost } from './contract-trend.ts';
import { interval, status, texts } from './contract-words.ts';

/*
 * The compiled lineage: the one value that pages, downloads and `compute` read.
 * Version rule: a field may be added at any time and readers ignore what they do not know; a field that is
 * renamed, removed, or changes its meaning or unit makes the number after the slash go up.
 * Numbers are in the trait's own unit, ages in Ma, lengths in mm; absent is null, never NaN.
 */

export { interval, status, texts };

const chartUnit = z.object({
  id: z.string(),
  rank: z.enum(['period', 'epoch', 'stage']),
  name: texts,
  from: z.number(),
  to: z.number(),
});

/** The whole compiled lineage. `compute` prints it and schemas/compiled.json describes it. */
export const compiledLineage = z.object({
  schema: z.literal('lineament.compiled/1'),
  lineage: z.string(),
  contentDigest: z.string(),
  resultDigest: z.string(),
  about: z.object({
    title: texts,
    question: texts,
    invented: z.boolean(),
    languages: z.array(z.string()).min(1),
    focus: z.string().describe('the trait that the pages open with'),
    edition: z.object({ number: z.number(), date: z.string(), status: z.string() }),
    editions: z.array(edition).optional().describe('all of them, newest first'),
    credits: z.array(z.string()),
    licence: z.string(),
    contact: z.string().optional(),
    preview: z
      .boolean()
      .optional()
      .describe('true in a preview: its pages are stamped, and it is not for publication'),
    sensitive: z.array(z.string()).optional().describe('human remains, or culturally sensitive material'),
  }),
  chart: z.object({ version: z.string(), citation: z.string(), units: z.array(chartUnit) }),
  horizons: z.array(horizon),
  bedOrder: z.array(bedOrder).describe('each bed with the next younger by the middle of its age'),
  taxa: z.array(taxon),
  specimens: z.array(specimen),
  references: z.array(reference),
  glossary: z.array(z.object({ id: z.string(), name: texts, meaning: texts })).optional(),
  trees: z.array(tree),
  characters: z.array(character).optional().describe('features in separate states, on the reference tree'),
  matrixFit: matrixFit.optional().describe('sums over the informative unordered characters of bones'),
  completeness: completeness.optional().describe('where elements or characters are told'),
  traits: z.array(trait),
  ghosts: z.array(ghost).describe('of the reference tree, oldest first'),
  congruence: z.array(congruence).describe('each tree against the order of finds'),
  drawings: z.array(drawing),
  shapes: shapes.optional(),
  templates: z.array(template).optional(),
  scheme: scheme.optional(),
  section: section.optional().describe('one sampled section, where there is one'),
});

export type Texts = z.output<typeof texts>;
export type Interval = z.output<typeof interval>;
export type Status = z.output<typeof status>;
export type CompiledLineage = z.output<typeof compiledLineage>;
export type CompiledTaxon = z.output<typeof taxon>;
export type CompiledSpecimen = z.output<typeof specimen>;
export type CompiledTree = z.output<typeof tree>;
export type CompiledSection = z.output<typeof section>;
export type { CompiledCharacter } from './contract-characters.ts';
export type { CompiledCompleteness } from './contract-material.ts';
export type { CompiledSize } from './contract-size.ts';
export type { CompiledCongruence, CompiledGhost, CompiledRates, CompiledTrend } from './contract-trend.ts';
export type CompiledTrait = z.output<typeof trait>;
export type CompiledScheme = z.output<typeof scheme>;
export type CompiledTemplate = z.output<typeof template>;
export type CompiledShapes = z.output<typeof shapes>;
export type CompiledDrawing = z.output<typeof drawing>;
export type CompiledValue = z.output<typeof value>;
export type { CompiledPicture };
