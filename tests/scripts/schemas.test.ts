import { Ajv } from 'ajv';
import { readFile } from 'node:fs/promises';
import { parse } from 'yaml';
import { describe, expect, it } from 'vitest';
import { jsonSchemas } from '../../scripts/compile/schema/json-schemas.ts';
import { compileChanged } from './fixtures/changed-lineage.ts';

const root = new URL('../../', import.meta.url);
const fixture = new URL('./fixtures/lineages/hill-hoppers/', import.meta.url);

describe('the committed JSON Schemas', () => {
  const made = jsonSchemas();

  it.each(Object.keys(made))(
    '%s is what the code says; `node scripts/schemas.ts` writes it',
    async (name) => {
      expect(await readFile(new URL(`schemas/${name}.json`, root), 'utf8')).toBe(made[name]);
    },
  );

  it.each(['lineage', 'scheme', 'horizons', 'taxa', 'specimens', 'traits'])(
    '%s accepts a right file, by a validator of other hands',
    async (name) => {
      const validate = new Ajv({ strict: false, validateFormats: false }).compile(
        JSON.parse(made[name]!) as object,
      );
      const record: unknown = parse(await readFile(new URL(`${name}.yaml`, fixture), 'utf8'));
      expect(validate(record), JSON.stringify(validate.errors)).toBe(true);
    },
  );

  it('compiled describes what is compiled, by a validator of other hands', async () => {
    const { compiled } = await compileChanged();
    const validate = new Ajv({ strict: false, validateFormats: false }).compile(
      JSON.parse(made['compiled']!) as object,
    );
    expect(validate(JSON.parse(JSON.stringify(compiled))), JSON.stringify(validate.errors)).toBe(true);
  });

  it('explains every field of a specimen that an author types', () => {
    const { items } = JSON.parse(made['specimens']!) as {
      items: { properties: Record<string, { description?: string }> };
    };
    expect(items.properties['id']!.description).toContain('hyphens');
    expect(items.properties['preparations']!.description).toContain('cast of');
  });
});
