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
  kind: z.enum(['bone', 'hollow', 'socket', 'opening', 'suture', 'crest', 'foramen', 'tooth', 'hole']).meta({
    description: 'how it is inked; a hole has at and radii, everything else a course through its stops',
  }),
  part: idOf('part'),
  bone: line.meta({ description: 'the bone that it belongs to', examples: ['premaxilla'] }),
  through: z.array(stop).min(2).optional().meta({ description: 'stops of its course, in order' }),
  undrawn: z.array(z.int().nonnegative()).optional().meta({
    description: 'runs between corners, counted from 0, that close the piece but have no edge of their own',
  }),
  weight: z
    .number()
    .positive()
    .optional()
    .meta({ description: 'width of the line against the usual one', examples: [1.5] }),
  at: idOf('landmark').optional(),
  radii: point.optional().meta({ description: 'half width and half height of a hole', examples: [[2, 1.4]] }),
});

/** A drawing template: landmarks, and the curves that hang on them, in the order of drawing. */
export const templateSchema = z
  .strictObject({
    id,
    view: idOf('view'),
    invented: z.boolean().meta({ description: 'true for proportions that are of no one animal' }),
    name: texts,
    frame: z
      .strictObject({
        zero: idOf('landmark').meta({ description: 'where x is 0', examples: ['prosthion'] }),
        hundred: idOf('landmark').meta({ description: 'where x is 100', examples: ['anterior-orbital-rim'] }),
        level: z.array(idOf('landmark')).min(1).meta({ description: 'landmarks that lie at y 0' }),
      })
      .meta({ description: 'how the drawing lies: x runs along the skull, y downward' }),
    parts: z
      .record(
        id,
        z.strictObject({
          elements: z.array(id).min(1).meta({
            description:
              'names under which a specimen may list the part; with none of them it is drawn as restored',
          }),
        }),
      )
      .meta({
        description: 'parts that are found or restored together',
        examples: [{ braincase: { elements: ['cranium'] } }],
      }),
    landmarks: z
      .record(
        id,
        z.strictObject({
          at: point.meta({ description: 'its place in the frame', examples: [[100, 0]] }),
          part: idOf('part'),
          bone: line.meta({ description: 'the bone that it is on', examples: ['maxilla'] }),
        }),
      )
      .meta({
        description: 'landmark id to its place, part and bone',
        examples: [{ prosthion: { at: [0, 0], part: 'snout', bone: 'premaxilla' } }],
      }),
    pieces: z.array(piece).min(1).meta({ description: 'what is drawn, in the order of drawing' }),
    shading: z
      .array(
        z.strictObject({
          piece: idOf('piece'),
          at: point.meta({ description: 'middle of the patch', examples: [[60, -12]] }),
          radii: point.meta({ description: 'half width and half height', examples: [[14, 8]] }),
          strength: z
            .number()
            .positive()
            .meta({ description: 'how dark, as a share of the darkest stipple', examples: [0.6] }),
        }),
      )
      .default([])
      .meta({ description: 'patches of stipple that give the form' }),
  })
  .meta({ title: 'a template', description: 'landmarks, and the curves that hang on them' });

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
