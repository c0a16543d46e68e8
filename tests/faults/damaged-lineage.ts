import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { compiledLineage } from '../../scripts/compile/contract.ts';
import { compileLineage } from '../../scripts/compile/index.ts';
import { openFolder } from '../../scripts/compile/read/files.ts';
import { mutate, type Damage } from './mutate.ts';

const text = /\.(yaml|csv|bib|mdx|nex|nwk)$/;
/** No compile of a small lineage may take the processor longer, on any machine that builds pages. */
const longestMs = 2000;
/** Nor may it wait for so long, however busy the machine is with other work. */
const longestWaitMs = 20_000;

/** A copy of a lineage that can be damaged file by file and is whole again after each trial. */
export interface Patient {
  files: string[];
  /** What was wrong with how the compiler took the damage; undefined when it took it well. */
  findFault(file: string, damage: readonly Damage[]): Promise<string | undefined>;
  remove(): Promise<void>;
}

/** Opens a copy of a lineage's folder for damage. `whole` compiles values too where no error is found. */
export async function openPatient(original: string, whole: boolean): Promise<Patient> {
  const parent = await mkdtemp(join(tmpdir(), 'damaged-'));
  const folder = join(parent, 'lineage');
  await cp(original, folder, { recursive: true });
  // The first compile is cold: it loads what later ones find in memory, and is not timed.
  await judge(folder, whole);
  const files = (await openFolder(folder)).files.filter((file) => text.test(file));
  return {
    files,
    async findFault(file, damage) {
      const path = join(folder, file);
      const before = await readFile(path, 'utf8');
      await writeFile(path, damage.reduce(mutate, before));
      try {
        return await judge(folder, whole);
      } finally {
        await writeFile(path, before);
      }
    },
    remove: () => rm(parent, { recursive: true, force: true }),
  };
}

async function judge(folder: string, whole: boolean): Promise<string | undefined> {
  const [started, used] = [performance.now(), process.cpuUsage()];
  const { compiled, findings } = await compileLineage(folder, { checkOnly: !whole, today: '2026-12-01' });
  const [waitedMs, { user, system }] = [performance.now() - started, process.cpuUsage(used)];
  const tookMs = Math.min(waitedMs, (user + system) / 1000);
  if (tookMs > longestMs || waitedMs > longestWaitMs)
    return `took ${tookMs.toFixed(0)} ms, ${waitedMs.toFixed(0)} ms by the clock`;
  for (const { file, line, column, endColumn, frame, message, advice } of findings) {
    if (!(line >= 1 && column >= 1 && endColumn >= column))
      return `no place: ${file}:${line}:${column}–${endColumn} ${message}`;
    if (frame === '' || message === '' || advice === '')
      return `nothing said: ${JSON.stringify({ frame, message, advice })}`;
    if (/undefined|\[object|NaN Ma|\bat .*\.ts:\d/.test(message + advice))
      return `not for an author: ${message}`;
  }
  const failed = findings.some(({ severity }) => severity === 'error');
  if (whole && failed === (compiled !== undefined))
    return failed ? 'a value beside errors' : 'neither value nor error';
  if (compiled && !compiledLineage.safeParse(JSON.parse(JSON.stringify(compiled))).success)
    return 'a value that is not the contract’s';
  return undefined;
}
