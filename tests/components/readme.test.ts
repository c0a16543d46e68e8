import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { compileAll } from '../../scripts/compile/index.ts';

const root = resolve(import.meta.dirname, '../..');

/** The files that the README shows: a path in code type, then a block. */
async function shownFiles(): Promise<[path: string, text: string][]> {
  const readme = await readFile(join(root, 'README.md'), 'utf8');
  const pattern = /`my-lineages\/([^`]+\.(?:yaml|bib))`:?\n\n```\w+\n([\s\S]*?)```/g;
  return [...readme.matchAll(pattern)].map((match) => [match[1]!, match[2]!]);
}

test('the lineage that the README shows compiles, and its faceless animal is worked out', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'lineament-readme-'));
  const files = await shownFiles();
  expect(files.map(([path]) => path)).toHaveLength(7);
  for (const [path, text] of files) {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), text);
  }
  const [result] = await compileAll(folder);
  await rm(folder, { recursive: true, force: true });
  expect(result!.findings.filter((finding) => finding.severity === 'error')).toEqual([]);
  const [trait] = result!.compiled!.traits;
  const statuses = Object.fromEntries(trait!.values.map((value) => [value.taxon, value.status]));
  expect(statuses['collina-vivens']).toBe('measured');
  expect(statuses['collina-longa']).toMatch(/inferred|unknown/);
});

test('the README opens with the job in one paragraph', async () => {
  const [title, paragraph] = (await readFile(join(root, 'README.md'), 'utf8')).split('\n\n');
  expect(title).toBe('# Lineament');
  expect(paragraph).toMatch(/^A vertebrate palaeontologist/);
});
