import { readdir, readFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { HtmlValidate } from 'html-validate';
import { expect, inject, test } from 'vitest';

const folder = inject('siteFolder');
/** Every page of every kind. */
const pages = (await readdir(folder, { recursive: true })).filter((file) => file.endsWith('.html')).sort();

/**
 * An outside checker of the HTML standard. Rules of layout in the source (spaces, quotes, case) are off: the pages are
 * compressed by the framework, and the standard allows it.
 */
const validator = new HtmlValidate({
  extends: ['html-validate:standard'],
  rules: { 'no-trailing-whitespace': 'off', 'attribute-boolean-style': 'off', 'void-style': 'off' },
});

test('there are pages to check', () => {
  expect(pages.length).toBeGreaterThanOrEqual(4);
});

test.each(pages)('%s follows the HTML standard', async (file) => {
  const report = await validator.validateString(await readFile(join(folder, file), 'utf8'));
  const faults = report.results.flatMap(({ messages }) =>
    messages.map(({ ruleId, message, line, column }) => `${ruleId}: ${message} at ${line}:${column}`),
  );
  expect(faults, relative(folder, file)).toEqual([]);
});
