import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import type { DrawingTemplate } from '../../analysis/geometry/template.ts';
import { severities } from './findings/codes.ts';
import { didYouMean } from './findings/suggest.ts';
import type { Report } from './findings/report.ts';
import { checkShape } from './read/shape.ts';
import { id, idOf, line, texts } from './schema/words.ts';
import { sourceText } from './source/source-text.ts';
import { parseYaml, type Located } from './source/yaml-source.ts';

const point = z.tuple([z.number(), z.number()]);

const stop = z.union([point, line]).meta({
  description: 'a landmark, a free point, or corner: the curve may bend sharply at the stop before it',
});

const piece = z.strictObject({
  id,
  kind: z.enum(['bone', 'hollow', 'socket', 'opening', 'suture', 'crest', 'foramen', 'tooth', 'hole']),
  part: idOf('part'),
  bone: line,
  through: z.array(stop).min(2).optional(),
  undrawn: z.array(z.int().nonnegative()).optional().meta({
    description: 'runs between corners, counted from 0, that close the piece but have no edge of their own',
  }),
  weight: z.number().positive().optional(),
  at: idOf('landmark').optional(),
  radii: point.optional(),
});

/** A drawing template: landmarks, and the curves that hang on them, in the order of drawing. */
export const templateSchema = z.strictObject({
  id,
  view: idOf('view'),
  invented: z.boolean(),
  name: texts,
  frame: z.strictObject({
    zero: idOf('landmark'),
    hundred: idOf('landmark'),
    level: z.array(idOf('landmark')).min(1),
  }),
  parts: z.record(id, z.strictObject({ elements: z.array(id).min(1) })),
  landmarks: z.record(id, z.strictObject({ at: point, part: idOf('part'), bone: line })),
  pieces: z.array(piece).min(1),
  shading: z
    .array(z.strictObject({ piece: idOf('piece'), at: point, radii: point, strength: z.number().positive() }))
    .default([]),
});

/** A template as read from its file. */
export type Template = z.output<typeof templateSchema>;

/** Reads one template from the text of its file; undefined after findings. `file` is the name that findings print. */
export function readTemplate(file: string, text: string, report: Report): DrawingTemplate | undefined {
  const own = countingErrors(report);
  const document = parseYaml(sourceText(file, text), own);
  if (!document) return undefined;
  const template = checkShape(document, templateSchema, own);
  if (!template) return undefined;
  checkNames(template, document, own);
  return own.hasErrors() ? undefined : template;
}

/** A report that passes everything on, and knows of no errors but those that came through it. */
function countingErrors(report: Report): Report {
  let wrong = false;
  return {
    ...report,
    add(code, span, message, advice) {
      if (severities[code] === 'error') wrong = true;
      report.add(code, span, message, advice);
    },
    hasErrors: () => wrong,
  };
}

/** Every template of a folder, by id. Findings go to the report; a folder that is not there holds none. */
export async function readTemplates(
  folder: string,
  report: Report,
): Promise<ReadonlyMap<string, DrawingTemplate>> {
  const entries = await readdir(folder).catch(() => []);
  const templates = new Map<string, DrawingTemplate>();
  for (const entry of entries.filter((name) => name.endsWith('.yaml')).sort()) {
    const file = join(folder, entry);
    const template = readTemplate(file, await readFile(file, 'utf8'), report);
    if (template) templates.set(template.id, template);
  }
  return templates;
}

function checkNames(template: Template, document: Located<unknown>, report: Report): void {
  const landmarks = Object.keys(template.landmarks);
  const known = {
    landmark: landmarks,
    part: Object.keys(template.parts),
    piece: template.pieces.map((each) => each.id),
  };
  const expect = (kind: keyof typeof known, name: string, path: readonly PropertyKey[]) => {
    if (known[kind].includes(name)) return;
    report.add(
      'unknown-id',
      document.at(path),
      `no ${kind} of this template is called "${name}"${didYouMean(name, known[kind])}`,
      `use one of its ${kind}s, or add this one`,
    );
  };
  expect('landmark', template.frame.zero, ['frame', 'zero']);
  expect('landmark', template.frame.hundred, ['frame', 'hundred']);
  template.frame.level.forEach((name, index) => expect('landmark', name, ['frame', 'level', index]));
  for (const [name, { part }] of Object.entries(template.landmarks))
    expect('part', part, ['landmarks', name, 'part']);
  template.shading.forEach((patch, index) => expect('piece', patch.piece, ['shading', index, 'piece']));
  template.pieces.forEach((each, index) => {
    const path = ['pieces', index] as const;
    expect('part', each.part, [...path, 'part']);
    if (each.at !== undefined) expect('landmark', each.at, [...path, 'at']);
    (each.through ?? []).forEach((name, place) => {
      if (typeof name === 'string' && name !== 'corner')
        expect('landmark', name, [...path, 'through', place]);
    });
    checkForm(each, document, path, report);
  });
}

/** A hole has a middle and radii, anything else a course. */
function checkForm(
  { kind, id: name, at, radii, through }: Template['pieces'][number],
  document: Located<unknown>,
  path: readonly PropertyKey[],
  report: Report,
): void {
  const complete = kind === 'hole' ? at !== undefined && radii !== undefined : through !== undefined;
  if (complete) return;
  const missing = kind === 'hole' ? 'at and radii' : 'through';
  report.add('missing-key', document.at(path), `the ${kind} ${name} has no ${missing}`, `add ${missing}`);
}
