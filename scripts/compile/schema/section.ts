import { z } from 'zod';
import { file, id, idOf, line, reference, sources, texts } from './words.ts';

const metres = (what: string) =>
  z.number().meta({ description: `${what}, in metres above the base of the section`, examples: [2.4] });

const wear = z
  .strictObject({
    id,
    crown: z.enum(['whole', 'worn']).meta({
      description: 'whole: the value is what it was; worn: some is gone, so the value only says at least',
    }),
    name: texts,
  })
  .meta({
    description: 'one stage of wear, as the table of individuals names it',
    examples: [{ id: 'tips-blunted', crown: 'worn', name: { en: 'tips blunted' } }],
  });

const rock = z
  .strictObject({
    from: metres('lower end'),
    to: metres('upper end'),
    rock: z
      .enum(['clay', 'silt', 'sand', 'gravel', 'limestone', 'ash'])
      .meta({ description: 'what the bed is made of; the drawn column is wider where grains are coarser' }),
  })
  .meta({ description: 'one bed of the rock column' });

const generation = z
  .strictObject({
    years: z
      .number()
      .positive()
      .meta({ description: 'mean age of parents, in years', examples: [2.5] }),
    source: reference
      .optional()
      .meta({ description: 'key of the reference; without it no rate a generation', examples: ['obm-2024'] }),
  })
  .meta({ description: 'how long a generation lasted' });

const drawing = z
  .strictObject({
    view: idOf('view').meta({ description: 'a view of scheme.yaml that names a template' }),
    crownLengthMm: z
      .number()
      .positive()
      .meta({
        description: 'length of the base of the crown in mm, which the drawing is scaled by',
        examples: [12.5],
      }),
    source: reference.optional(),
  })
  .meta({ description: 'how a tooth of a given height is drawn' });

/** section.yaml: many individuals from the levels of one section. */
export const section = z
  .strictObject({
    id,
    name: texts,
    taxon: idOf('taxon'),
    trait: idOf('trait').meta({ description: 'the length that is compared' }),
    tooth: line.meta({ description: 'the one position that is compared', examples: ['m2'] }),
    institutionCode: line.optional().meta({ description: 'where all of them are kept', examples: ['OBM'] }),
    levels: file.meta({
      description:
        'a table: level, height (m), and where they are known horizon, time-averaging (ka) and source',
      examples: ['sheets/levels.csv'],
    }),
    individuals: file.meta({
      description: 'a table, one row an individual: catalogNumber, level, tooth, wear and the measurement',
      examples: ['sheets/crowns.csv'],
    }),
    wear: z.array(wear).min(1).meta({ description: 'stages of wear that the table of individuals names' }),
    generation: generation.optional(),
    drawing: drawing.optional(),
    rocks: z.array(rock).default([]).meta({ description: 'the rock column, bed by bed' }),
    sources: sources.optional(),
  })
  .meta({ title: 'section.yaml', description: 'one section, its levels, and the individuals found in them' });

export type Section = z.output<typeof section>;
export type RockKind = Section['rocks'][number]['rock'];
