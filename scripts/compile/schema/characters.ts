import { z } from 'zod';
import { id, line, sources, texts } from './words.ts';

const state = z.strictObject({ id, label: texts }).meta({
  description: 'one state that animals can have',
  examples: [{ id: 'raised', label: { en: 'raised' } }],
});

/** One character of characters.yaml. */
export const character = z
  .strictObject({
    id,
    label: texts,
    states: z
      .array(state)
      .min(2)
      .meta({ description: 'the states, two or more; in their order where they have one' }),
    ordered: z.boolean().default(false).meta({
      description:
        'true where a change passes through every state between; else any state can become any other',
    }),
    scored: z.record(z.string(), z.array(z.string().min(1))).meta({
      description:
        'state to the animals that have it; an animal under two states has one of them, and nobody knows which; one under none is not scored',
      examples: [{ flat: ['prorhina-minor'], raised: ['calamorhina-vivax'] }],
    }),
    sources: sources.optional(),
    softPart: z
      .strictObject({
        state: line.meta({ description: 'the state that means that it has the part', examples: ['present'] }),
        sign: z
          .strictObject({
            character: line.meta({
              description: 'a character of the skeleton',
              examples: ['lip-muscle-scar'],
            }),
            state: line.meta({ description: 'its state where the part was', examples: ['deep'] }),
          })
          .optional()
          .meta({ description: 'the mark that the part leaves on bone' }),
      })
      .optional()
      .meta({
        description:
          'for a part that seldom preserves: it is scored in the animals that show it, and the living ones bracket the fossils',
      }),
  })
  .meta({ description: 'a feature of the skeleton that comes in separate states' });

/** characters.yaml: features in separate states, for the tree of relatives. */
export const characters = z
  .array(character)
  .meta({ title: 'characters.yaml', description: 'features in separate states, for the tree of relatives' });

export type AuthoredCharacter = z.output<typeof character>;
