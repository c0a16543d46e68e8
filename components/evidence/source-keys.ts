import type { LineageView } from '../lineage/view.ts';

/** Keys of the sources that the evidence of an animal rests on: its own, and those of its specimens. */
export function sourceKeys(view: LineageView, taxon: string): Set<string> {
  const { sources, specimens } = view.requireTaxon(taxon);
  return new Set([...sources, ...specimens.flatMap((id) => view.findSpecimen(id)?.sources ?? [])]);
}
