import { describe, expect, it } from 'vitest';
import { compileChanged, findingsAfter, replaced } from './fixtures/changed-lineage.ts';

const waiting = {
  'lineage.yaml': replaced('licence: CC0-1.0', 'licence: CC0-1.0\nembargo: 2027-01-01'),
  'taxa.yaml': replaced(
    'scientificName: Collina dubia',
    'scientificName: Collina dubia, nomenclature: informal',
  ),
};

describe('what may not be published yet', () => {
  it('stops a public build', async () => {
    const { compiled, findings } = await compileChanged(waiting);
    expect(compiled).toBeUndefined();
    expect(findings.filter(({ severity }) => severity === 'error').map(({ code }) => code)).toEqual([
      'embargo',
      'informal-name',
    ]);
  });

  it('is compiled in a preview, which says that it is one', async () => {
    const { compiled } = await compileChanged(waiting, { preview: true });
    expect(compiled!.about.preview).toBe(true);
    expect((await compileChanged()).compiled!.about.preview).toBeUndefined();
  });

  it('is free from its day on', async () => {
    expect(await findingsAfter({ 'lineage.yaml': waiting['lineage.yaml'] }, { today: '2027-01-01' })).toBe(
      '',
    );
  });
});
