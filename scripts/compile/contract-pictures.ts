import { z } from 'zod';
import { texts } from './contract-words.ts';

/* Pictures of specimens; `contract.ts` is the whole. Places are in px from the upper left of the picture as it is seen. */

const place = z.tuple([z.number(), z.number()]);

const pictureMarks = z.object({
  landmarks: z.array(z.object({ id: z.string(), at: place })).describe('mean of the repeats'),
  breaks: z.array(z.object({ landmark: z.string(), points: z.array(place) })),
  scale: z
    .object({ from: place, to: place, mm: z.number() })
    .optional()
    .describe('the bar in the picture from which lengths were taken'),
  mmPerPx: z.number(),
  mirrored: z.boolean().describe('the picture was turned over'),
});

/** A picture of a specimen, whose it is, and what was digitised on it. */
export const picture = z.object({
  file: z.string().describe('path from the folder of the lineage'),
  width: z.number().int().optional().describe('px, upright'),
  height: z.number().int().optional(),
  digest: z.string().optional().describe('of the file: twelve hexadecimal digits of SHA-256'),
  alt: texts,
  drawnFrom: z.enum(['specimen', 'photograph', 'diagram']).optional(),
  credit: z.string(),
  licence: z.string(),
  venues: z.array(z.string()).optional().describe('where it may be shown; left out means everywhere'),
  marks: pictureMarks.optional(),
});

export type CompiledPicture = z.output<typeof picture>;
