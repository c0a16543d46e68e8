import { describe, expect, it } from 'vitest';
import { openReport } from '../../scripts/compile/findings/report.ts';
import type { LineageRecords } from '../../scripts/compile/read/lineage-records.ts';
import { readEntries } from '../../scripts/compile/read/entries.ts';
import { checkShape } from '../../scripts/compile/read/shape.ts';
import { nameTips } from '../../scripts/compile/resolve/tips.ts';
import { parseTrees } from '../../scripts/compile/resolve/trees.ts';
import { fileSchemas } from '../../scripts/compile/schema/index.ts';
import { sourceText } from '../../scripts/compile/source/source-text.ts';
import { parseYaml } from '../../scripts/compile/source/yaml-source.ts';

const many = 100_000;

function resolve(newick: string, taxa: string) {
  const report = openReport();
  const text = `title: { en: T }\nquestion: { en: Q }\nlanguages: [en]\nfocus: t\nlicence: CC0-1.0\neditions: [{ number: 1, date: 2026-01-01, status: draft }]\ntrees: [{ id: main, newick: "${newick}", dating: { method: equal-share, root: 9 } }]\n`;
  const record = parseYaml(sourceText('lineage.yaml', text), report)!;
  const lineage = { ...record, value: checkShape(record, fileSchemas.lineage, report)! };
  const records = {
    lineage,
    taxa: readEntries('taxa', sourceText('taxa.yaml', taxa), report),
    treeFiles: new Map(),
    folder: { files: [] },
  } as unknown as LineageRecords; // trees ask for nothing else
  return { trees: nameTips(parseTrees(records, report), records, report), findings: report.list() };
}

describe('a tree', () => {
  it('with a hundred thousand forks one below the other is read without a deep stack', () => {
    const deep = `${'('.repeat(many)}a,b)${',a)'.repeat(many - 1)};`;
    const { findings } = resolve(
      deep,
      '- { id: a, scientificName: A a, living: true }\n- { id: b, scientificName: B b, living: true }\n',
    );
    expect(new Set(findings.map(({ code }) => code))).toEqual(new Set(['tip-twice']));
  });

  it('with a hundred thousand tips is read, and every tip is named', () => {
    const ids = Array.from({ length: many }, (_, index) => `t${index}`);
    const taxa = ids.slice(0, 10).map((id) => `- { id: ${id}, scientificName: T ${id}, living: true }\n`);
    const { findings } = resolve(`(${ids.join(',')});`, taxa.join(''));
    expect(findings).toHaveLength(50);
    expect(findings.at(-1)!.advice).toContain(`and ${many - 10 - 50} more like this in this file`);
    expect(findings[0]!.message).toContain('the tip "t10" of the tree "main" is no taxon');
  });

  // Shapes of the published description of the Newick format (Olsen 1990; Felsenstein's page of the standard, from memory), names our own.
  it.each([
    ['tips without names', '(,,(,));', 'tree-syntax'],
    ['names of forks are no tips', '(a,b)c;', undefined],
    ['lengths everywhere', '(a:0.1,b:0.2):0.0;', undefined],
    ['comments and quoted names', "('a'[remark],b);", undefined],
    ['three at one fork', '(a,b,c);', undefined],
    ['without its semicolon', '(a,b)', 'tree-syntax'],
    ['with text after it', '(a,b);(a,b);', 'tree-syntax'],
    ['with a bracket too many', '(a,b));', 'tree-syntax'],
  ])('%s', (_, newick, code) => {
    const taxa = ['a', 'b', 'c']
      .map((id) => `- { id: ${id}, scientificName: T ${id}, living: true }\n`)
      .join('');
    const { findings } = resolve(newick, taxa);
    const errors = findings.filter(({ severity }) => severity === 'error');
    expect(new Set(errors.map((finding) => finding.code))).toEqual(new Set(code === undefined ? [] : [code]));
  });
});
