import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { appendFile, cp, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { projectRoot } from '../../scripts/options.ts';

let folder: string;
let content: string;
let out: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lineament-'));
  content = join(folder, 'content');
  out = join(projectRoot, '.lineament', `whole-${process.pid}`);
  await cp(join(projectRoot, 'content'), content, { recursive: true });
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
  await rm(out, { recursive: true, force: true });
});

function build() {
  return spawnSync(
    process.execPath,
    [join(projectRoot, 'scripts', 'build.ts'), '--content', 'content', '--out', out],
    {
      cwd: projectRoot,
      encoding: 'utf8',
      env: { ...process.env, INIT_CWD: folder },
    },
  );
}

/** One digest over the names and bytes of every file. */
async function digestOf(place: string): Promise<string> {
  const entries = await readdir(place, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
  const hash = createHash('sha256');
  for (const file of files.sort()) hash.update(file).update(await readFile(file));
  return hash.digest('hex');
}

test('a story that cannot be read leaves the built site as it was, to the byte', async () => {
  const good = build();
  expect(good.status, good.stderr).toBe(0);
  const before = await digestOf(out);

  await appendFile(
    join(content, 'reed-trunks', 'story.en.mdx'),
    '\n<Step focus="calamorhina-vivax">\n\nnever closed\n',
  );
  const broken = build();
  expect(broken.status).toBe(1);
  expect(broken.stderr).toMatch(/story\.en\.mdx:\d+:\d+/);
  expect(await digestOf(out)).toBe(before);

  const beside = await readdir(join(projectRoot, '.lineament'));
  expect(beside.filter((name) => /^whole-.*\.(next|old)-/.test(name))).toEqual([]);
});
