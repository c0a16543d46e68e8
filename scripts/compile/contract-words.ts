import { z } from 'zod';

/* Small shapes that all parts of the compiled lineage are made of. */

/** Language tag to text. */
export const texts = z.record(z.string(), z.string());

/** Ends of an interval; null where it has none on that side. */
export const interval = z.tuple([z.number().nullable(), z.number().nullable()]);

/** What is known of a value; told by shape, fill, line and word. */
export const status = z.enum(['measured', 'bounded', 'inferred', 'unknown']);
