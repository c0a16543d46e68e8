import { expect, it } from 'vitest';
import { compileChanged } from './fixtures/changed-lineage.ts';

it('a lineage without a story compiles to the same values, and warns', async () => {
  const [told, silent] = [await compileChanged(), await compileChanged({ 'story.en.mdx': null })];
  expect(silent.findings.filter(({ code }) => code === 'story-missing')).toMatchObject([
    { severity: 'warning', file: 'lineage.yaml', line: 5 },
  ]);
  expect(silent.compiled!.traits).toEqual(told.compiled!.traits);
});

it('a language without a story compiles where the other has one', async () => {
  const spanish = (text: string) =>
    text
      .replace('languages: [en]', 'languages: [en, es]')
      .replaceAll(/\{ en: ([^{}]+?) \}/g, '{ en: $1, es: $1 }')
      .replaceAll(/, en: ([^{}]+?) \}/g, ', en: $1, es: $1 }');
  const files = ['lineage', 'scheme', 'taxa', 'traits'].map((name) => [`${name}.yaml`, spanish]);
  const { compiled, findings } = await compileChanged(
    Object.fromEntries(files) as Record<string, typeof spanish>,
  );
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  expect(findings.map(({ message }) => message)).toContain('there is no story in "es"');
  expect(compiled!.about.languages).toEqual(['en', 'es']);
});
