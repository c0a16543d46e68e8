import type { CompiledValue } from '../../scripts/compile/contract.ts';
import type { LineageView } from '../lineage/view.ts';
import { phraseOf } from './phrase.ts';

/** The phrase of a value on a page; undefined for a trait without marks at 0 and 100. */
export function phraseOfValue(view: LineageView, value: CompiledValue): string | undefined {
  const [start, end] = [0, 100].map((at) => view.trait.marks.find((mark) => mark.at === at));
  if (!start || !end) return undefined;
  return phraseOf(value, { start: view.text(start.text), end: view.text(end.text) }, view.voice);
}
