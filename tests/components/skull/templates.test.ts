import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { DrawingTemplate } from '../../../analysis/geometry/index.ts';
import { composeSkull } from '../../../components/figures/skull/compose-skull.ts';
import { openReport } from '../../../scripts/compile/findings/report.ts';
import { readTemplate, readTemplates } from '../../../scripts/compile/templates.ts';
import { shippedTemplate } from './fixtures/templates.ts';

const folder = resolve(import.meta.dirname, '../../../content/templates');

/** A template drawn as it is. */
function plain(template: DrawingTemplate) {
  const landmarks = Object.entries(template.landmarks).map(([id, { at }]) => [
    id,
    { at, basis: 'digitised' as const },
  ]);
  return {
    id: template.id,
    template,
    landmarks: Object.fromEntries(landmarks),
    elements: Object.values(template.parts).map(({ elements }) => elements[0]!),
    breaks: [],
    measured: [
      { landmark: template.frame.zero, value: 0 },
      { landmark: template.frame.hundred, value: 100 },
    ],
  };
}

describe('the templates that come with the tool', () => {
  test('are read without a finding', async () => {
    const report = openReport();
    const templates = await readTemplates(folder, report);
    expect(report.list()).toEqual([]);
    expect([...templates.keys()]).toEqual(['cheek-tooth-side', 'mammal-skull-left']);
  });

  test.each(['mammal-skull-left', 'cheek-tooth-side'])(
    '%s draws itself, with its ends at 0 and 100',
    (id) => {
      const { bone, restored } = composeSkull(plain(shippedTemplate(id)), 'outline');
      expect(bone.length).toBeGreaterThan(8);
      expect(restored).toEqual([]);
    },
  );

  test.each(['mammal-skull-left', 'cheek-tooth-side'])(
    '%s uses every one of its landmarks in a curve',
    (id) => {
      const { pieces, landmarks, frame } = shippedTemplate(id);
      const used = new Set([
        ...pieces.flatMap(({ through = [], at }) => [...through, at]),
        frame.zero,
        frame.hundred,
        ...frame.level,
      ]);
      expect(Object.keys(landmarks).filter((name) => !used.has(name))).toEqual([]);
    },
  );

  test('the skull is made for the landmarks of the bundled lineage', () => {
    const scheme = readFileSync(resolve(folder, '../reed-trunks/scheme.yaml'), 'utf8');
    const missing = Object.keys(shippedTemplate('mammal-skull-left').landmarks).filter(
      (id) => !scheme.includes(`- id: ${id}\n`),
    );
    expect(missing).toEqual([]);
  });

  test('a folder that is not there holds none', async () => {
    const report = openReport();
    expect((await readTemplates('/nowhere/at/all', report)).size).toBe(0);
    expect(report.list()).toEqual([]);
  });
});

describe('a mistake in a template', () => {
  const text = readFileSync(`${folder}/cheek-tooth-side.yaml`, 'utf8');
  const findings = (from: string, to: string) => {
    const report = openReport();
    expect(text).toContain(from);
    expect(readTemplate('tooth.yaml', text.replace(from, to), report)).toBeUndefined();
    return report.list().map(({ line, message, advice }) => `${line}: ${message}; ${advice}`);
  };

  test('in the name of a landmark is told with its line and the nearest name', () => {
    expect(findings('[cusp-valley, [51, -40]', '[cusp-valey, [51, -40]')).toMatchInlineSnapshot(`
      [
        "41: no landmark of this template is called "cusp-valey"; did you mean "cusp-valley"?; use one of its landmarks, or add this one",
      ]
    `);
  });

  test('in the kind of a piece is told with the kinds there are', () => {
    expect(findings('kind: opening', 'kind: window')).toMatchInlineSnapshot(`
      [
        "45: unknown pieces.8.kind: "window"; choose one of: bone, hollow, socket, opening, suture, crest, foramen, tooth, hole",
      ]
    `);
  });

  test('in the name of a part is told', () => {
    expect(findings('part: roots, bone: dentine }', 'part: rots, bone: dentine }')).toMatchInlineSnapshot(`
      [
        "27: no part of this template is called "rots"; did you mean "roots"?; use one of its parts, or add this one",
      ]
    `);
  });

  test('that leaves out a course is told', () => {
    expect(findings(', through: [[20, 26], [16, 46], [15, 68]]', '')).toMatchInlineSnapshot(`
      [
        "38: the crest front-root-groove has no through; add through",
      ]
    `);
  });
});
