import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { drawSkull } from '../../../components/figures/skull/draw-skull.ts';
import { openReport } from '../../../scripts/compile/findings/report.ts';
import { readTemplate } from '../../../scripts/compile/templates.ts';

const guide = await readFile(resolve(import.meta.dirname, '../../../content/templates/README.md'), 'utf8');
const example = /```yaml\n([\s\S]*?)```/.exec(guide)![1]!;

test('the template that the guide shows is taken without a finding, and draws', () => {
  const report = openReport();
  const template = readTemplate('templates/shin-bone-side.yaml', example, report)!;
  expect(report.list()).toEqual([]);
  const landmarks = Object.fromEntries(
    Object.entries(template.landmarks).map(([id, { at }]) => [id, { at, basis: 'digitised' as const }]),
  );
  // a longer, thinner bone than the template's
  const thin = Object.fromEntries(
    Object.entries(landmarks).map(([id, { at, basis }]) => [
      id,
      { at: [at[0], at[1] * 0.7] as const, basis },
    ]),
  );
  const { picture, foldsBetween } = drawSkull(
    { id: 'shin', template, landmarks: thin, elements: ['tibia'], breaks: [], measured: [] },
    'hero',
  );
  expect(foldsBetween).toBeUndefined();
  expect(picture.bone.map(({ role }) => role)).toEqual(expect.arrayContaining(['bone', 'pen', 'soft']));
  expect(picture.restored).toEqual([]);
});
