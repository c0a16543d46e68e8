import { z } from 'zod';
import { idOf, line } from './words.ts';

/** One exact locality of private.yaml. */
export const privateRecord = z
  .strictObject({
    specimen: idOf('specimen').optional(),
    horizon: idOf('horizon').optional(),
    decimalLatitude: z.number().min(-90).max(90).optional(),
    decimalLongitude: z.number().min(-180).max(180).optional(),
    landowner: line.optional(),
    note: line.optional(),
  })
  .meta({ description: 'where a find was made: never published' });

/** private.yaml: exact localities; kept out of version control and never compiled. */
export const privateRecords = z
  .array(privateRecord)
  .meta({ title: 'private.yaml', description: 'exact localities and landowners, never published' });
