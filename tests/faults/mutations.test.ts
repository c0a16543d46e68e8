import fc from 'fast-check';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { openPatient } from './damaged-lineage.ts';
import { damage } from './mutate.ts';

const bundled = fileURLToPath(new URL('../../content/reed-trunks', import.meta.url));
const sampled = fileURLToPath(new URL('../../content/loam-delvers', import.meta.url));
const small = fileURLToPath(new URL('../scripts/fixtures/lineages/hill-hoppers', import.meta.url));

async function survive(original: string, whole: boolean, runs: number, seed: number): Promise<void> {
  const patient = await openPatient(original, whole);
  try {
    const trial = fc.tuple(
      fc.constantFrom(...patient.files),
      fc.array(damage, { minLength: 1, maxLength: 3 }),
    );
    await fc.assert(
      fc.asyncProperty(trial, async ([file, acts]) => {
        expect(await patient.findFault(file, acts), file).toBeUndefined();
      }),
      { seed, numRuns: runs, endOnFailure: true },
    );
  } finally {
    await patient.remove();
  }
}

describe('a lineage with damage done to any of its files', () => {
  it('gives a whole value or findings with places, never a crash, a hang or NaN (small lineage, 800 times)', async () => {
    await survive(small, true, 800, 20261125);
  }, 240_000);

  it('gives findings with places in good time (bundled lineage, 200 times)', async () => {
    await survive(bundled, false, 200, 20261126);
  }, 240_000);

  it('gives a whole value or findings with places, never a crash, a hang or NaN (sampled section, 100 times)', async () => {
    await survive(sampled, true, 100, 20261127);
  }, 240_000);
});
