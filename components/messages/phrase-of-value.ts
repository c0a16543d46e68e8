import type { CompiledValue } from '../../scripts/compile/contract.ts';
import type { LineageView } from '../lineage/view.ts';
import { sayPlace } from './phrase.ts';

/** The phrase of a value on a page; undefined where it has none, or the trait has no marks at 0 and 100. */
export function phraseOfValue({ trait, text, voice }: LineageView, value: CompiledValue): string | undefined {
  const said = trait.statements.find(({ kind, taxon }) => kind === 'place' && taxon === value.taxon);
  const [start, end] = [0, 100].map((at) => trait.marks.find((mark) => mark.at === at));
  if (!said || !start || !end) return undefined;
  return sayPlace(said, { start: text(start.text), end: text(end.text) }, voice);
}
