import { toScale, type TraitScale } from '../../analysis/traits/index.ts';
import type { CompiledTrait, CompiledTree } from '../../scripts/compile/contract.ts';
import type { LineageView } from '../lineage/view.ts';
import { voiceOf } from '../messages/say.ts';
import { valueText } from '../messages/value-text.ts';
import { findLimitTwig } from './limit-twig.ts';
import type { LiveData } from './live-data.ts';
import { browserWords } from './live-words.ts';
import { platesOf } from './plate-frames.ts';
import { estimateWithout, findMiss, type LiveNumbers } from './recompute.ts';
import { relativesValue } from './relatives-value.ts';

/**
 * The data block of a page; undefined where its trait has no estimates, or where what is compiled does not give back the
 * compiler's own leave-one-out to every printed digit, as where one animal has several broken skulls.
 */
export function findLiveData(view: LineageView): LiveData | undefined {
  const { trait, lineage, language } = view;
  const tree = lineage.trees.find(({ id }) => id === trait.model?.tree);
  const numbers = tree && findNumbers(trait, tree);
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

function findNumbers(trait: CompiledTrait, tree: CompiledTree): LiveNumbers | undefined {
  const { model } = trait;
  if (!model || (model.name !== 'brownian' && model.name !== 'trend')) return undefined;
  const scale = scaleOf(trait);
  const tips = new Set(tree.nodes.map(({ taxon }) => taxon));
  const inTree = trait.values.filter(({ taxon }) => tips.has(taxon));
  const measured = inTree.filter(({ status }) => status === 'measured');
  const bare = {
    scale,
    model: model.name,
    level: 0.95,
    tree: treeNumbers(tree),
    measured: {
      taxon: measured.map(({ taxon }) => taxon),
      mean: measured.map(({ estimate }) => toScale(scale, estimate!)),
      variance: measured.map(({ standardError }) => (standardError ?? 0) ** 2),
    },
    unmeasured: inTree.filter(({ status }) => status !== 'measured').map(({ taxon }) => taxon),
  } as const;
  const limits = inTree.flatMap((value) => (value.status === 'bounded' ? [value] : []));
  const found = limits.map((value) => findLimit(value, trait, bare));
  return found.every((limit) => limit !== undefined) ? { ...bare, limits: found } : undefined;
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

/** The limit of a bounded animal before its error; undefined where what is compiled of it does not tell. */
function findLimit(
  { taxon, limits }: CompiledTrait['values'][number],
  { pooled }: CompiledTrait,
  bare: Omit<LiveNumbers, 'limits'>,
): LiveData['limits'][number] | undefined {
  const printed = limits?.atLeast ?? limits?.atMost;
  const reading = limits?.working?.rows.find(({ lostMm }) => lostMm === 0)?.value;
  const probability = limits?.probability;
  const closed = limits?.atLeast !== undefined && limits.atMost !== undefined;
  if (printed === undefined || reading === undefined || probability === undefined || closed) return undefined;
  const side = limits!.atLeast === undefined ? 'atMost' : 'atLeast';
  const at = toScale(bare.scale, reading);
  const limit = { taxon, specimen: limits!.specimen, [side]: at };
  const distance = Math.abs(at - toScale(bare.scale, printed));
  const twig = findLimitTwig(bare, limit, { spread: pooled?.variance ?? 0, distance, probability });
  return twig === undefined ? undefined : { ...limit, twig };
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
