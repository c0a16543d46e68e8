import type { CompiledValue } from '../../scripts/compile/contract.ts';
import type { LineageView } from '../lineage/view.ts';
import { isolated } from '../messages/direction.ts';

/**
 * How to cite one value: whose it is, what it says, the work and its edition, and where it stands. The digest of the results
 * tells whether a later edition says something else; invented records say so.
 */
export function citationOf(view: LineageView, value: CompiledValue, address: string): string {
  const said = view.voice.say('evidence.cite', {
    name: view.requireTaxon(value.taxon).name,
    trait: view.text(view.trait.label),
    value: view.printed(value.taxon).printed,
  });
  return `${said} ${citationOfPage(view, address)}`;
}

/** How to cite a whole page: the work, its edition, the digest of its results, and where it stands. */
export function citationOfPage({ lineage, voice, text }: LineageView, address: string): string {
  const { edition, title, invented } = lineage.about;
  const said = voice.say('cite.page', {
    title: text(title),
    number: edition.number,
    date: edition.date,
    digest: lineage.resultDigest.slice(0, 12),
  });
  return `${said} ${isolated(address, voice.language)}${invented ? ` (${voice.say('evidence.citeInvented')})` : ''}`;
}
