import { z } from 'zod';
import { fileSchemas } from './index.ts';

let keys: ReadonlySet<string> | undefined;

/** Every key that any kind of record may hold, for ‘did you mean’; gathered when first asked for. */
export function knownKeys(): ReadonlySet<string> {
  keys ??= gather();
  return keys;
}

function gather(): Set<string> {
  const found = new Set<string>();
  for (const schema of Object.values(fileSchemas)) collect(z.toJSONSchema(schema, { io: 'input' }), found);
  return found;
}

function collect(node: unknown, found: Set<string>): void {
  if (node === null || typeof node !== 'object') return;
  for (const [key, inner] of Object.entries(node)) {
    if (key === 'properties' && inner !== null && typeof inner === 'object')
      Object.keys(inner).forEach((each) => found.add(each));
    collect(inner, found);
  }
}
