import { describe, expect, it } from 'vitest';
import { openReport } from '../../../scripts/compile/findings/report.ts';
import { readText } from '../../../scripts/compile/read/files.ts';
import { findingsAfter, replaced } from '../fixtures/changed-lineage.ts';

describe('messages about files', () => {
  it('a file that every lineage needs is missing', async () => {
    expect(await findingsAfter({ 'taxa.yaml': null })).toMatchInlineSnapshot(`
      "taxa.yaml:1:1-1 error missing-file
        there is no taxa.yaml
        add taxa.yaml to the folder of the lineage"
    `);
  });

  it('a file leads out of the folder', async () => {
    expect(
      await findingsAfter({
        'lineage.yaml': replaced(
          'newick: "((saltula-prima,saltula-brevis),((collina-nana,collina-media),(collina-longa,collina-vivens)));"',
          'file: ../other/tree.nwk',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "lineage.yaml:9:11-28 error file-outside
        "../other/tree.nwk" is not a path inside the folder of the lineage
        copy the file into the folder and name it from there, with forward slashes"
    `);
  });

  it('a file is not UTF-8', async () => {
    expect(
      await findingsAfter({
        'references.bib': Buffer.from(
          '@book{hopper-notes, title={Caf\u00e9}, author={Heath}, year={2020}}',
          'latin1',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "references.bib:1:31-32 error not-utf8
        the file is not UTF-8 (perhaps Windows-1252 or Mac Roman)
        save it again with the encoding UTF-8"
    `);
  });

  it('a file is UTF-16', async () => {
    expect(
      await findingsAfter({
        'sheets/callipers.csv': Buffer.from('\ufeffspecimen,muzzle-length (mm)\n', 'utf16le'),
      }),
    ).toMatchInlineSnapshot(`
      "sheets/callipers.csv:1:1-2 error not-utf8
        the file is UTF-16
        save it again with the encoding UTF-8"
    `);
  });

  it('a table is too big to be one', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': new Uint8Array(40_000_001) }))
      .toMatchInlineSnapshot(`
      "sheets/callipers.csv:1:1-1 error file-too-big
        sheets/callipers.csv has 40000001 bytes; at most 40000000 are read
        split the table, or leave out what is not used"
    `);
  });

  it('a file is gone before it is read', async () => {
    const report = openReport();
    const folder = { path: '/nowhere', id: 'nowhere', shown: 'nowhere', files: ['taxa.yaml'] };
    expect(await readText(folder, 'taxa.yaml', report)).toBeUndefined();
    expect(report.list()).toMatchObject([
      { code: 'unreadable-file', file: 'nowhere/taxa.yaml', message: 'taxa.yaml cannot be read: ENOENT' },
    ]);
  });
});
