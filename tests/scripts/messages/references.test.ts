import { describe, expect, it } from 'vitest';
import { added, findingsAfter, replaced } from '../fixtures/changed-lineage.ts';

describe('messages about references', () => {
  it('a reference has no year', async () => {
    expect(await findingsAfter({ 'references.bib': replaced('  year = {2020},\n', '') }))
      .toMatchInlineSnapshot(`
      "references.bib:1:10-22 error reference-incomplete
        "hopper-notes" has no year
        add it to the entry"
    `);
  });

  it('a reference is cited nowhere', async () => {
    expect(
      await findingsAfter({
        'references.bib': added('@book{spare, author = {Heath, Bo}, title = {Spare}, year = 2001}\n'),
      }),
    ).toMatchInlineSnapshot(`
      "references.bib:10:7-12 warning reference-unused
        "spare" is cited nowhere
        cite it under sources or source, or remove it"
    `);
  });

  it('a reference is not closed', async () => {
    expect(
      await findingsAfter({
        'references.bib': replaced('note = {Invented for tests}\n}', 'note = {Invented for tests\n'),
      }),
    ).toMatchInlineSnapshot(`
      "references.bib:10:1-1 error bibtex-syntax
        not BibTeX: unterminated brace-value
        close the braces of the entry, and put a comma between its fields"
    `);
  });

  it('a key is given twice', async () => {
    expect(
      await findingsAfter({
        'references.bib': added('@book{hopper-notes, author = {Heath, Bo}, title = {Spare}, year = 2001}\n'),
      }),
    ).toMatchInlineSnapshot(`
      "references.bib:10:7-19 error duplicate-id
        the key "hopper-notes" is given twice
        rename or remove one of the entries"
    `);
  });
});
