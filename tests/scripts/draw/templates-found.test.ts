import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { compileLineage } from '../../../scripts/compile/index.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lineament-template-'));
  await cp(resolve(import.meta.dirname, '../../../content/reed-trunks'), join(folder, 'reed-trunks'), {
    recursive: true,
  });
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function edit(file: string, from: string, to: string): Promise<void> {
  const path = join(folder, 'reed-trunks', file);
  await writeFile(path, (await readFile(path, 'utf8')).replace(from, to));
}

test('a mistake elsewhere does not make the template of a view unknown', async () => {
  await edit('lineage.yaml', 'focus: nasal-position', 'focus: nasal-positon');
  const { findings } = await compileLineage(join(folder, 'reed-trunks'));
  expect(
    findings.filter(({ severity }) => severity === 'error').map(({ file }) => file.split('/').at(-1)),
  ).toEqual(['lineage.yaml']);
  await edit('lineage.yaml', 'focus: nasal-positon', 'focus: nasal-position');
});

test('a template that nobody has is told at the view, with the nearest name', async () => {
  await edit('scheme.yaml', 'template: mammal-skull-left', 'template: mammal-skull-lft');
  const { findings } = await compileLineage(join(folder, 'reed-trunks'));
  expect(findings.filter(({ severity }) => severity === 'error')).toMatchObject([
    {
      code: 'unknown-id',
      line: 4,
      message: 'no template is called "mammal-skull-lft"; did you mean "mammal-skull-left"?',
    },
  ]);
});
