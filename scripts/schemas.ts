/* Writes the JSON Schemas that editors use to check and explain records: `node scripts/schemas.ts`. */
import { mkdir, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { jsonSchemas } from './compile/schema/json-schemas.ts';

const folder = fileURLToPath(new URL('../schemas/', import.meta.url));
await mkdir(folder, { recursive: true });
for (const [name, text] of Object.entries(jsonSchemas())) await writeFile(`${folder}${name}.json`, text);
