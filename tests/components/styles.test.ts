import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const folder = join(import.meta.dirname, '../../components/styles');
const names = (await readdir(folder, { recursive: true })).filter((name) => name.endsWith('.css'));
const sheets = await Promise.all(
  names.map(async (name) => ({ name, css: await readFile(join(folder, name), 'utf8') })),
);

test.each(sheets)('$name, read alone, is short enough to hold in mind', ({ css }) => {
  expect(css.split('\n').length).toBeLessThanOrEqual(320);
});

test('every sheet is imported once', () => {
  const imports = sheets.flatMap(({ name, css }) =>
    [...css.matchAll(/@import '\.\/([^']+)'/g)].map((found) => join(name, '..', found[1]!)),
  );
  expect(imports.sort()).toEqual(names.filter((name) => name !== 'index.css').sort());
});
