import type { LineageView } from '../lineage/view.ts';
import { sayStatement } from '../messages/say-statement.ts';

/** The error of one reading, for each way and length in which a trait was read again: its name, if it is not the trait, and a sentence. */
export function readAgain({
  trait,
  lineage,
  voice,
  text,
}: LineageView): { name: string; sentence: string }[] {
  // one statement for each row of the repeats, in their order
  const said = trait.statements.filter(({ kind }) => kind === 'repeats');
  return trait.repeats.map(({ measurement }, index) => ({
    name: text(lineage.scheme?.measurements.find(({ id }) => id === measurement)?.name),
    sentence: sayStatement(said[index]!, voice),
  }));
}
