import { z } from 'zod';
import { age } from './age.ts';
import { id, line, sources, texts } from './words.ts';

/** One animal of taxa.yaml. */
export const taxon = z
  .strictObject({
    id,
    scientificName: line.meta({ examples: ['Limnorhina fracta'] }),
    scientificNameAuthorship: line.optional(),
    nomenclature: z
      .enum(['published', 'in-press', 'informal'])
      .default('published')
      .meta({ description: 'an informal name is not published by a public build' }),
    vernacularName: texts.optional(),
    role: z.enum(['ingroup', 'outgroup', 'comparator']).default('ingroup'),
    living: z.boolean().default(false),
    age: age.optional().meta({
      description:
        'only where no specimen here gives it, or as a range that finds must lie in; with its source',
    }),
    note: texts.optional(),
    sources: sources.optional(),
  })
  .meta({ description: 'a species, or whatever stands at a tip' });

/** taxa.yaml: the animals. */
export const taxa = z.array(taxon).meta({ title: 'taxa.yaml', description: 'the animals' });

export type Taxon = z.output<typeof taxon>;
