import { z } from 'zod';
import { age } from './age.ts';
import { id, line, sources, texts } from './words.ts';

/** One animal of taxa.yaml. */
export const taxon = z
  .strictObject({
    id,
    scientificName: line.meta({
      description: 'genus and species, without author',
      examples: ['Limnorhina fracta'],
    }),
    scientificNameAuthorship: line
      .optional()
      .meta({ description: 'who named it, and when', examples: ['Reed, 2024'] }),
    nomenclature: z
      .enum(['published', 'in-press', 'informal'])
      .default('published')
      .meta({ description: 'an informal name is not published by a public build' }),
    vernacularName: texts.optional(),
    role: z.enum(['ingroup', 'outgroup', 'comparator']).default('ingroup').meta({
      description:
        'ingroup: what the story is about; outgroup: what it is compared with on the tree; comparator: shown beside',
    }),
    living: z.boolean().default(false).meta({ description: 'true for an animal that lives today' }),
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
