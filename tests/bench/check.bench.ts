import { readFile, rm, writeFile, cp, mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { compileLineage, countFindings } from '../../scripts/compile/index.ts';
import fc from 'fast-check';
import { openPatient } from '../faults/damaged-lineage.ts';
import { damage } from '../faults/mutate.ts';
import { writeLargeLineage } from './large-lineage.ts';

const bundled = fileURLToPath(new URL('../../content/reed-trunks', import.meta.url));
const timeout = 60 * 60_000;

async function timeMs(run: () => Promise<unknown>, runs: number): Promise<string> {
  const times: number[] = [];
  for (let index = 0; index < runs; index++) {
    const started = performance.now();
    await run();
    times.push(performance.now() - started);
  }
  times.sort((one, other) => one - other);
  const at = (share: number) => times[Math.floor(share * (runs - 1))]!.toFixed(0);
  return `median ${at(0.5)} ms (quartiles ${at(0.25)}–${at(0.75)}, lowest ${at(0)})`;
}

test('check of the bundled lineage, warm, one file edited each time', { timeout }, async () => {
  const parent = await mkdtemp(join(tmpdir(), 'check-'));
  const folder = join(parent, 'reed-trunks');
  await cp(bundled, folder, { recursive: true });
  const taxa = join(folder, 'taxa.yaml');
  const text = await readFile(taxa, 'utf8');
  let edit = 0;
  const run = async () => {
    await writeFile(taxa, `${text}# edit ${edit++}\n`);
    return compileLineage(folder, { checkOnly: true });
  };
  for (let warm = 0; warm < 5; warm++) await run();
  console.log(`check of the bundled lineage, warm: ${await timeMs(run, 25)}; aim under 150 ms`);
  await rm(parent, { recursive: true });
});

test('check of 20,000 specimens and 2,000 taxa, cold', { timeout }, async () => {
  const folder = await writeLargeLineage(2000, 20_000);
  const started = performance.now();
  const { findings } = await compileLineage(folder, { checkOnly: true });
  console.log(
    `20,000 specimens, 2,000 taxa: ${(performance.now() - started).toFixed(0)} ms, ${countFindings(findings)}; aim under 5 s`,
  );
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  await rm(dirname(folder), { recursive: true });
});

test('20,000 pieces of damage to the small lineage', { timeout }, async () => {
  const patient = await openPatient(
    fileURLToPath(new URL('../scripts/fixtures/lineages/hill-hoppers', import.meta.url)),
    true,
  );
  const trial = fc.tuple(fc.constantFrom(...patient.files), fc.array(damage, { minLength: 1, maxLength: 3 }));
  const started = performance.now();
  await fc.assert(
    fc.asyncProperty(trial, async ([file, acts]) => {
      expect(await patient.findFault(file, acts), file).toBeUndefined();
    }),
    { seed: 4, numRuns: 20_000, endOnFailure: true },
  );
  console.log(`20,000 pieces of damage: ${((performance.now() - started) / 1000).toFixed(0)} s, no fault`);
  await patient.remove();
});
