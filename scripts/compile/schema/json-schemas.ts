import { z } from 'zod';
import { compiledLineage } from '../contract.ts';
import { templateSchema } from '../templates.ts';
import { fileSchemas } from './index.ts';

/** File name without ending to the text of the JSON Schema: one for each kind of record, `template`, and `compiled`. */
export function jsonSchemas(): Record<string, string> {
  const made = Object.entries({ ...fileSchemas, template: templateSchema }).map(([kind, schema]) => [
    kind,
    print(schema, 'input'),
  ]);
  return Object.fromEntries([...made, ['compiled', print(compiledLineage, 'output')]]) as Record<
    string,
    string
  >;
}

function print(schema: z.ZodType, io: 'input' | 'output'): string {
  return `${JSON.stringify(z.toJSONSchema(schema, { io, target: 'draft-07' }), null, 2)}\n`;
}
