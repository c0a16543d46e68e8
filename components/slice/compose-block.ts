import { preparePoints, templateShape, type DrawingTemplate } from '../../analysis/geometry/index.ts';
import type { CompiledShapes, CompiledTree } from '../../scripts/compile/contract.ts';
import { plateData } from '../figures/scene/plate-data.ts';
import { drawingsOf, smallSkullAddress } from '../figures/skull-figures.ts';
import { diagramWords } from '../figures/skull-words.ts';
import type { LineageView } from '../lineage/view.ts';
import { interfaceLanguages } from '../messages/say.ts';
import { branchName } from './branch-names.ts';
import { findShapedOutline, shapeOfNode } from './node-outlines.ts';
import { roughPoints } from './rough-points.ts';
import type { SliceAnimal, SliceBlock, SliceBranch } from './slice-block.ts';
import { sliceChart } from './slice-chart.ts';
import { templateOutline, type TemplateOutline } from './template-outline.ts';

/** Room around the outlines, in tenths of a unit. */
const room = 60;

const wordKeys = [
  'slice',
  'slice.alone',
  'slice.bones',
  'slice.inferred',
  'slice.noShape',
  'slice.line',
] as const;

/** What the slice of a lineage is drawn from; undefined without a dated tree, shapes along it, or a template for them. */
export function findSliceBlock(view: LineageView): SliceBlock | undefined {
  const { lineage, trait } = view;
  const tree = lineage.trees.find(({ reference }) => reference);
  const { shapes } = lineage;
  const template = lineage.templates?.find(({ id }) => id === shapes?.template) as
    DrawingTemplate | undefined; // the same fields, read from JSON
  if (!tree || !shapes || !template || shapes.trait !== trait.id || shapes.tree !== tree.id) return undefined;
  const outline = templateOutline(template, trait.accent);
  const outlines = outlinesOf(shapes, template, outline);
  const reading = shapes.landmarks.indexOf(trait.measured?.to ?? '');
  return {
    schema: 'lineament.slice/2',
    branches: sliceBranches(view, tree),
    values: shapes.nodes.map(({ at }) => at[2 * reading]!),
    lines: outline.lines.map((line) => ({ ...line, rough: roughPoints(outlines, line) })),
    outlines,
    box: boxAround(outlines),
    chart: sliceChart(view).measure,
    language: view.language,
    words: browserWords(view.language),
  };
}

/** Outlines take seconds and are the same in every language: one set a compiled lineage. */
const known = new WeakMap<CompiledShapes, SliceBlock['outlines']>();

function outlinesOf(
  shapes: CompiledShapes,
  template: DrawingTemplate,
  outline: TemplateOutline,
): SliceBlock['outlines'] {
  const prepared = preparePoints(outline.points, [...templateShape(template).values()]);
  const found =
    known.get(shapes) ??
    shapes.nodes.map(({ at }) => findShapedOutline(template, prepared, shapeOfNode(shapes, at)) ?? null);
  known.set(shapes, found);
  return found;
}

function sliceBranches(view: LineageView, tree: CompiledTree): SliceBranch[] {
  const nodes = new Map(tree.nodes.map((node, index) => [node.id, { node, index }]));
  const { branches } = plateData(view.lineage, view.trait, view.language);
  return branches.map(({ id, from, lastMa, taxon }) => {
    const { node, index } = nodes.get(id)!;
    return {
      id,
      from: { ageMa: from.ageMa },
      toMa: node.ageMa,
      lastMa,
      ends: [nodes.get(node.parent!)!.index, index],
      name: branchName(view, tree, id),
      ...(taxon !== undefined && { animal: animalOf(view, taxon) }),
    };
  });
}

function animalOf(view: LineageView, id: string): SliceAnimal {
  const taxon = view.requireTaxon(id);
  const drawing = drawingsOf(view).find((each) => each.taxon === id);
  const { printed } = view.printed(id);
  return {
    taxon: id,
    firstMa: taxon.finds.first ?? taxon.age?.from ?? -1,
    lastMa: taxon.finds.last ?? taxon.age?.to ?? 0,
    name: [{ text: taxon.name, voice: 'name' }],
    note: [printed, drawing ? diagramWords(view, drawing) : view.voice.say('slice.noSkull')].join(' · '),
    ...(drawing && { picture: smallSkullAddress(view, id) }),
  };
}

function boxAround(outlines: SliceBlock['outlines']): SliceBlock['box'] {
  let [left, top, right, bottom] = [0, 0, 0, 0];
  for (const outline of outlines)
    for (let index = 0; index < (outline?.length ?? 0); index += 2) {
      const [x, y] = [outline![index]!, outline![index + 1]!];
      [left, right] = [Math.min(left, x), Math.max(right, x)];
      [top, bottom] = [Math.min(top, y), Math.max(bottom, y)];
    }
  return [left - room, top - room, right - left + 2 * room, bottom - top + 2 * room];
}

function browserWords(language: string): Record<string, string> {
  const [own, english] = [interfaceLanguages[language] ?? {}, interfaceLanguages['en']!];
  return Object.fromEntries(wordKeys.map((key) => [key, own[key] ?? english[key]!]));
}
