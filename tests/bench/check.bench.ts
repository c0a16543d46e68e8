import { readFile, rm, writeFile, cp, mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { compileLineage } from '../../scripts/compile/index.ts';
import fc from 'fast-check';
import { openPatient } from '../faults/damaged-lineage.ts';
import { damage } from '../faults/mutate.ts';
import { writeLargeLineage } from './large-lineage.ts';

const bundled = fileURLToPath(new URL('../../content/reed-trunks', import.meta.url));
const timeout = 60 * 60_000;

const rounds = 15;

/** What one run took: by the clock, and of the processor, which other work on the machine hardly moves. */
interface Took {
  wallMs: number;
  processorMs: number;
}

async function time(run: () => Promise<unknown>): Promise<Took> {
  const [started, used] = [performance.now(), process.cpuUsage()];
  await run();
  const { user, system } = process.cpuUsage(used);
  return { wallMs: performance.now() - started, processorMs: (user + system) / 1000 };
}

/** Times of each of some runs, taken in turn in every round, so that a busy minute of the machine meets all alike. */
async function timeInterleaved(
  runs: Readonly<Record<string, () => Promise<unknown>>>,
): Promise<Record<string, Took[]>> {
  const times: Record<string, Took[]> = {};
  for (let round = 0; round < rounds; round++)
    for (const [name, run] of Object.entries(runs)) (times[name] ??= []).push(await time(run));
  return times;
}

/** Median and quartiles in words: of 15 runs the 8th, and the 4th and 12th. */
function spread(times: readonly Took[]): string {
  const told = (what: keyof Took) => {
    const sorted = times.map((each) => each[what]).sort((one, other) => one - other);
    const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))]!.toFixed(0);
    return `median ${at(0.5)} ms (quartiles ${at(0.25)} to ${at(0.75)}, lowest ${at(0)})`;
  };
  return `${told('wallMs')}; of the processor ${told('processorMs')}`;
}

/** Checks a copy of a folder again and again, one file edited each time. */
async function editedCheck(original: string, file: string) {
  const parent = await mkdtemp(join(tmpdir(), 'check-'));
  const folder = join(parent, basename(original));
  await cp(original, folder, { recursive: true });
  const text = await readFile(join(folder, file), 'utf8');
  let edit = 0;
  return {
    check: async () => {
      await writeFile(join(folder, file), `${text}# edit ${edit++}\n`);
      const { findings } = await compileLineage(folder, { checkOnly: true });
      expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    },
    remove: () => rm(parent, { recursive: true }),
  };
}

test('check of the bundled lineage, warm, and of 20,000 specimens, in turn', { timeout }, async () => {
  const large = await writeLargeLineage(2000, 20_000);
  const [own, many] = [await editedCheck(bundled, 'taxa.yaml'), await editedCheck(large, 'taxa.yaml')];
  const cold = await time(many.check);
  for (let warm = 0; warm < 5; warm++) await own.check();
  const times = await timeInterleaved({ bundled: own.check, large: many.check });
  console.log(`${rounds} runs each, in turn`);
  console.log(`bundled lineage, warm, taxa.yaml edited: ${spread(times['bundled']!)}; aim under 150 ms`);
  console.log(
    `20,000 specimens, 2,000 taxa: cold ${cold.wallMs.toFixed(0)} ms (processor ${cold.processorMs.toFixed(0)}), then ${spread(times['large']!)}; aim under 5 s`,
  );
  for (const { remove } of [own, many]) await remove();
  await rm(dirname(large), { recursive: true });
});

test('pieces of damage to the small lineage', { timeout }, async () => {
  const patient = await openPatient(
    fileURLToPath(new URL('../scripts/fixtures/lineages/hill-hoppers', import.meta.url)),
    true,
  );
  const trial = fc.tuple(fc.constantFrom(...patient.files), fc.array(damage, { minLength: 1, maxLength: 3 }));
  // Another seed is another 20,000, or as many as are asked for:
  // FAULT_SEED=5 FAULT_RUNS=4000 npm run bench -- tests/bench/check.bench.ts
  const seed = Number(process.env['FAULT_SEED'] ?? 4);
  const numRuns = Number(process.env['FAULT_RUNS'] ?? 20_000);
  const started = performance.now();
  await fc.assert(
    fc.asyncProperty(trial, async ([file, acts]) => {
      expect(await patient.findFault(file, acts), file).toBeUndefined();
    }),
    { seed, numRuns, endOnFailure: true },
  );
  console.log(
    `${numRuns} pieces of damage, seed ${seed}: ${((performance.now() - started) / 1000).toFixed(0)} s, no fault`,
  );
  await patient.remove();
});
