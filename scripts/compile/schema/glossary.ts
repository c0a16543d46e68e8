import { z } from 'zod';
import { id, texts } from './words.ts';

/** One word of glossary.yaml. */
export const term = z.strictObject({ id, name: texts, meaning: texts }).meta({
  description: 'a word of the trade and what it means',
  examples: [{ id: 'naris', name: { en: 'naris' }, meaning: { en: 'opening of the nose in the skull' } }],
});

/** glossary.yaml: words of the trade. */
export const glossary = z.array(term).meta({ title: 'glossary.yaml', description: 'words of the trade' });

export type Term = z.output<typeof term>;
