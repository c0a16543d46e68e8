import { execFile } from 'node:child_process';
import { cp, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { compiledLineage } from '../../scripts/compile/contract.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const lineages = fileURLToPath(new URL('./fixtures/lineages', import.meta.url));
let broken: string;

interface Ran {
  code: number;
  out: string;
  err: string;
}

/** Runs a command of the project as `npm run` does, from a folder where a person stands. */
function run(command: string, words: readonly string[], env: Record<string, string> = {}): Promise<Ran> {
  const clean = Object.fromEntries(
    Object.entries(process.env).filter(([key]) => key !== 'LINEAMENT_CONTENT'),
  );
  return new Promise((resolve) => {
    execFile(
      process.execPath,
      [join(root, 'scripts', `${command}.ts`), ...words],
      { cwd: root, env: { ...clean, ...env }, maxBuffer: 1e8 },
      (error, out, err) => {
        resolve({ code: error ? Number(error.code) : 0, out, err });
      },
    );
  });
}

beforeAll(async () => {
  broken = await mkdtemp(join(tmpdir(), 'broken-'));
  await cp(join(lineages, 'hill-hoppers'), join(broken, 'hill-hoppers'), { recursive: true });
  await writeFile(
    join(broken, 'hill-hoppers', 'taxa.yaml'),
    '- { id: saltula-prima, scientificName: Saltula prima, roll: outgroup }\n',
  );
});

afterAll(() => rm(broken, { recursive: true }));

describe('check', () => {
  it('prints warnings and how many, and ends well', async () => {
    const { code, out } = await run('check', ['--content', lineages]);
    expect(code).toBe(0);
    expect(out).toContain('[taxon-in-no-tree]');
    expect(out.trimEnd().split('\n').at(-1)).toBe('hill-hoppers: 1 warning');
  });

  it('ends with 1 on errors', async () => {
    const { code, out } = await run('check', ['--content', broken]);
    expect(code).toBe(1);
    expect(out).toContain('unknown key "roll"; did you mean "role"?');
  });

  it('gives findings as JSON for editors', async () => {
    const { code, out } = await run('check', ['--content', broken, '--json']);
    const findings = JSON.parse(out) as Record<string, unknown>[];
    expect(code).toBe(1);
    expect(Object.keys(findings[0]!)).toEqual([
      'severity',
      'code',
      'file',
      'line',
      'column',
      'endColumn',
      'frame',
      'message',
      'advice',
    ]);
  });

  it('takes the folder from where the person stands, and from the environment', async () => {
    const standing = { INIT_CWD: join(lineages, '..') };
    expect((await run('check', ['--content', 'lineages'], standing)).out).toContain(
      'hill-hoppers: 1 warning',
    );
    expect((await run('check', [], { ...standing, LINEAMENT_CONTENT: 'lineages' })).out).toContain(
      'hill-hoppers: 1 warning',
    );
  });
});

describe('compute', () => {
  it('prints a compiled lineage and nothing else', async () => {
    const { code, out, err } = await run('compute', ['hill-hoppers', '--content', lineages]);
    expect(code).toBe(0);
    expect(compiledLineage.parse(JSON.parse(out)).lineage).toBe('hill-hoppers');
    expect(err).toContain('[taxon-in-no-tree]');
  });

  it('prints no value and ends with 1 on errors', async () => {
    const { code, out, err } = await run('compute', ['hill-hoppers', '--content', broken]);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain('unknown key "roll"');
  });

  it('names the lineages there are when it is asked for another', async () => {
    const { code, err } = await run('compute', ['hill-hopers', '--content', lineages]);
    expect(code).toBe(2);
    expect(err).toBe(
      'unknown lineage: "hill-hopers"; did you mean "hill-hoppers"? there are: hill-hoppers\n',
    );
  });

  it('says so when there is no folder of that name', async () => {
    const { code, err } = await run('compute', ['hill-hoppers', '--content', join(lineages, 'nowhere')]);
    expect(code).toBe(2);
    expect(err).toMatch(/^no folder of lineages at .*nowhere; name another with --content DIR\n$/);
  });
});
