import { toScale, type TraitScale } from '../../analysis/traits/index.ts';
import type { CompiledTrait, CompiledTree } from '../../scripts/compile/contract.ts';
import type { LineageView } from '../lineage/view.ts';
import { voiceOf } from '../messages/say.ts';
import { valueText } from '../messages/value-text.ts';
import type { LiveData } from './live-data.ts';
import { browserWords } from './live-words.ts';
import { platesOf } from './plate-frames.ts';
import { estimateWithout, findMiss, type LiveNumbers } from './recompute.ts';
import { relativesValue } from './relatives-value.ts';

/**
 * The data block of a page; undefined where its trait has no estimates, or where what is compiled does not give back the
 * compiler's own leave-one-out to every printed digit.
 */
export function findLiveData(view: LineageView): LiveData | undefined {
  const { trait, lineage, language } = view;
  const tree = lineage.trees.find(({ id }) => id === trait.model?.tree);
  const numbers = tree && findNumbers(trait, { ...tree, nodes: nodesFor(trait, tree) });
  if (!numbers || !reproduces(numbers, trait)) return undefined;
  const told = [...numbers.measured.taxon, ...numbers.unmeasured];
  return {
    schema: 'lineament.live/1',
    trait: trait.id,
    ...numbers,
    names: Object.fromEntries(told.map((taxon) => [taxon, view.requireTaxon(taxon).name])),
    truth: Object.fromEntries(numbers.measured.taxon.map((taxon) => [taxon, view.printed(taxon).printed])),
    language,
    words: browserWords(language),
    ...platesOf(view),
  };
}

/** Numbers of a trait on the scale of its model; undefined for a model that has no place here. */
export function findNumbers(trait: CompiledTrait, tree: CompiledTree): LiveNumbers | undefined {
  const { model } = trait;
  if (!model || (model.name !== 'brownian' && model.name !== 'trend')) return undefined;
  const scale = scaleOf(trait);
  const tips = new Set(tree.nodes.map(({ taxon }) => taxon));
  const inTree = trait.values.filter(({ taxon }) => tips.has(taxon));
  const measured = inTree.filter(({ status }) => status === 'measured');
  return {
    scale,
    model: model.name,
    level: 0.95,
    seed: model.seed,
    tree: treeNumbers(tree),
    measured: {
      taxon: measured.map(({ taxon }) => taxon),
      mean: measured.map(({ estimate }) => toScale(scale, estimate!)),
      variance: measured.map(({ standardError }) => (standardError ?? 0) ** 2),
    },
    limits: trait.twigs.map(({ variance, ...limit }) => ({ ...limit, twig: variance })),
    unmeasured: inTree.filter(({ status }) => status !== 'measured').map(({ taxon }) => taxon),
  };
}

/** Nodes of a tree as the finds that carry the trait date them. */
export function nodesFor({ ages }: CompiledTrait, { id, nodes }: CompiledTree): CompiledTree['nodes'] {
  const own = ages?.find(({ tree }) => tree === id)?.ageMa;
  return own ? nodes.map((node, index) => ({ ...node, ageMa: own[index]! })) : nodes;
}

/** Per cent is of a hundred, a plain ratio of one. */
function scaleOf({ scale, unit }: CompiledTrait): TraitScale {
  return { kind: scale, whole: unit === 'ratio' ? 1 : 100 };
}

function treeNumbers({ nodes }: CompiledTree): LiveData['tree'] {
  const index = new Map(nodes.map(({ id }, at) => [id, at]));
  return {
    parent: nodes.map(({ parent }) => (parent === null ? -1 : index.get(parent)!)),
    ageMa: nodes.map(({ ageMa }) => ageMa),
    taxon: nodes.map(({ taxon }) => taxon ?? ''),
  };
}

/** Whether the numbers give back the compiled leave-one-out, and every value from relatives, to each printed digit. */
function reproduces(numbers: LiveNumbers, trait: CompiledTrait): boolean {
  const print = (each: Parameters<typeof relativesValue>[0]) =>
    valueText(relativesValue(each), voiceOf('en')).printed;
  const now = estimateWithout(numbers, new Set());
  const inferred = trait.values.filter(({ status }) => status === 'inferred');
  return (
    trait.leaveOneOut.length > 0 &&
    trait.leaveOneOut.every((each) => {
      const again = findMiss(numbers, new Set(), each.taxon);
      return again && print(again) === print(each);
    }) &&
    inferred.every((value) => {
      const again = now?.get(value.taxon);
      return again && print(again) === print({ ...value, median: value.estimate! });
    })
  );
}
