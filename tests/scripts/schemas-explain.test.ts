import { readdir, readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { jsonSchemas } from '../../scripts/compile/schema/json-schemas.ts';

interface Node {
  description?: string;
  examples?: unknown[];
  type?: string;
  enum?: unknown[];
  const?: unknown;
  properties?: Record<string, Node>;
}

/** Every field of a schema with its path, at any depth. */
function fieldsOf(value: unknown, path = ''): [string, Node][] {
  if (value === null || typeof value !== 'object') return [];
  const own = Object.entries((value as Node).properties ?? {}).map(([key, node]): [string, Node] => [
    `${path}.${key}`,
    node,
  ]);
  const inner = Object.entries(value)
    .filter(([key]) => key !== 'examples' && key !== 'default')
    .flatMap(([key, node]) => fieldsOf(node, key === 'properties' ? path : `${path}.${key}`));
  return [...own, ...inner];
}

const authored = Object.entries(jsonSchemas()).filter(([name]) => name !== 'compiled');

describe('hovering a field in an editor', () => {
  it.each(authored)('explains every field of %s', (_, text) => {
    const fields = fieldsOf(JSON.parse(text));
    expect(fields.length).toBeGreaterThan(0);
    expect(fields.filter(([, { description }]) => !description).map(([path]) => path)).toEqual([]);
  });

  it.each(authored)('gives an example of every text and number of %s', (_, text) => {
    const open = fieldsOf(JSON.parse(text)).filter(
      ([, node]) =>
        (node.type === 'string' || node.type === 'number' || node.type === 'integer') && !node.enum,
    );
    expect(open.filter(([, { examples }]) => !examples?.length).map(([path]) => path)).toEqual([]);
  });
});

const content = new URL('../../content/', import.meta.url);

it('every bundled record names its schema in its first line, and the schema is there', async () => {
  const files = (await readdir(content, { recursive: true })).filter((file) => file.endsWith('.yaml'));
  expect(files.length).toBeGreaterThan(8);
  for (const file of files) {
    const [first] = (await readFile(new URL(file, content), 'utf8')).split('\n');
    const kind = file.startsWith('templates/') ? 'template' : file.replace(/^.*\/|\.yaml$/g, '');
    expect(first, file).toBe(`# yaml-language-server: $schema=../../schemas/${kind}.json`);
    expect(authored.map(([name]) => name)).toContain(kind);
  }
});
