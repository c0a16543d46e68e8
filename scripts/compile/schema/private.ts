import { z } from 'zod';
import { idOf, line } from './words.ts';

/** One exact locality of private.yaml. */
export const privateRecord = z
  .strictObject({
    specimen: idOf('specimen').optional(),
    horizon: idOf('horizon').optional(),
    decimalLatitude: z
      .number()
      .min(-90)
      .max(90)
      .optional()
      .meta({ description: 'degrees north of the equator, negative to the south', examples: [12.34567] }),
    decimalLongitude: z
      .number()
      .min(-180)
      .max(180)
      .optional()
      .meta({ description: 'degrees east of Greenwich, negative to the west', examples: [-1.23456] }),
    landowner: line
      .optional()
      .meta({ description: 'whose land it is; the name may stand in no other file', examples: ['B. Stone'] }),
    note: line
      .optional()
      .meta({ description: 'how to find the place again', examples: ['third gully from the ford'] }),
  })
  .meta({ description: 'where a find was made: never published' });

/** private.yaml: exact localities; kept out of version control and never compiled. */
export const privateRecords = z
  .array(privateRecord)
  .meta({ title: 'private.yaml', description: 'exact localities and landowners, never published' });
