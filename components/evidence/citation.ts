import type { CompiledValue } from '../../scripts/compile/contract.ts';
import type { LineageView } from '../lineage/view.ts';

/**
 * How to cite one value: whose it is, what it says, the work and its edition, and where it stands. The digest of the results
 * tells whether a later edition says something else; invented records say so.
 */
export function citationOf(view: LineageView, value: CompiledValue, address: string): string {
  const { lineage, trait, voice } = view;
  const { edition, title, invented } = lineage.about;
  const said = voice.say('evidence.cite', {
    name: view.requireTaxon(value.taxon).name,
    trait: view.text(trait.label),
    value: view.printed(value.taxon).printed,
    title: view.text(title),
    number: edition.number,
    date: edition.date,
    digest: lineage.resultDigest.slice(0, 12),
  });
  return `${said} ${address}${invented ? ` (${voice.say('evidence.citeInvented')})` : ''}`;
}
