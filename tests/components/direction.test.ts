import { readdir, readFile } from 'node:fs/promises';
import { dirname, join, relative, resolve } from 'node:path';
import { expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');

/** Every import of a source file: from `import` and `export … from`, and dynamic ones. */
async function importsBelow(folder: string): Promise<{ file: string; target: string }[]> {
  const entries = await readdir(join(root, folder), { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile() && /\.(ts|astro|mts)$/.test(entry.name));
  const found = await Promise.all(
    files.map(async (entry) => {
      const path = join(entry.parentPath, entry.name);
      const text = await readFile(path, 'utf8');
      const targets = [...text.matchAll(/(?:from\s+|import\s*\(\s*|import\s+)['"]([^'"]+)['"]/g)].map(
        (match) => match[1]!,
      );
      return targets.map((target) => ({
        file: relative(root, path),
        target: target.startsWith('.') ? relative(root, resolve(dirname(path), target)) : target,
      }));
    }),
  );
  return found.flat();
}

test('analysis imports nothing but itself', async () => {
  const wrong = (await importsBelow('analysis')).filter(({ target }) => !target.startsWith('analysis/'));
  expect(wrong).toEqual([]);
});

test('scripts import nothing of components', async () => {
  const wrong = (await importsBelow('scripts')).filter(({ target }) => target.startsWith('components/'));
  expect(wrong).toEqual([]);
});

test('the compiler knows nothing of Astro', async () => {
  const wrong = (await importsBelow('scripts/compile')).filter(({ target }) => /^astro(:|\/|$)/.test(target));
  expect(wrong).toEqual([]);
});

test('components read of scripts only the compiled lineage, the loader and the place of the content', async () => {
  const allowed = new Set(['scripts/compile/contract.ts', 'scripts/astro-adapter.ts', 'scripts/options.ts']);
  const wrong = (await importsBelow('components')).filter(
    ({ target }) => target.startsWith('scripts/') && !allowed.has(target),
  );
  expect(wrong).toEqual([]);
});
