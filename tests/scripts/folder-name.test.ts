import { cp, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { compileLineage } from '../../scripts/compile/index.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lineament-names-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const hoppers = resolve(import.meta.dirname, 'fixtures/lineages/hill-hoppers');

test.each([
  ['bench', 'the site has a page of its own at "bench"'],
  ['Hill Hoppers', 'the folder "Hill Hoppers" is no address: small letters, digits and single hyphens'],
])('a lineage in a folder called %s is refused at its title', async (name, message) => {
  await cp(hoppers, join(folder, name), { recursive: true });
  const { compiled, findings } = await compileLineage(join(folder, name));
  expect(compiled).toBeUndefined();
  expect(findings.filter(({ severity }) => severity === 'error')).toMatchObject([
    { code: 'unsafe-id', message },
  ]);
});
