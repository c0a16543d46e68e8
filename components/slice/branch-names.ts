import type { CompiledTree } from '../../scripts/compile/contract.ts';
import type { TextRun } from '../figures/scene/scene.ts';
import type { LineageView } from '../lineage/view.ts';

const firstPlace = '\u0001';
const lastPlace = '\u0002';

/** A branch in words: 'branch of A' for an animal's own twig, 'on the way to A and B' before a fork. */
export function branchName(view: LineageView, tree: CompiledTree, node: string): TextRun[] {
  const own = tree.nodes.find(({ id }) => id === node)?.taxon;
  if (own !== undefined)
    return withNames(view.voice.say('slice.branchOf', { name: firstPlace }), [view.requireTaxon(own).name]);
  const tips = tipsUnder(tree, node);
  const names = [tips[0]!, tips.at(-1)!].map((taxon) => view.requireTaxon(taxon).name);
  return withNames(view.voice.say('slice.towards', { first: firstPlace, last: lastPlace }), names);
}

/** Animals that descend from a node, in the order of the tree. */
function tipsUnder({ nodes }: CompiledTree, node: string): string[] {
  const own = nodes.find(({ id }) => id === node)?.taxon;
  if (own !== undefined) return [own];
  return nodes
    .filter(({ parent }) => parent === node)
    .flatMap(({ id }) => tipsUnder({ nodes } as CompiledTree, id));
}

function withNames(sentence: string, names: readonly string[]): TextRun[] {
  return sentence
    .split(/([\u0001\u0002])/)
    .filter((part) => part !== '')
    .map((part): TextRun => {
      const name = names[[firstPlace, lastPlace].indexOf(part)];
      return name === undefined ? { text: part, voice: 'plain' } : { text: name, voice: 'name' };
    });
}
