import type { LineageView } from '../lineage/view.ts';
import { sayStatement } from '../messages/say-statement.ts';

/** The error of one reading, a sentence for each way and length in which a trait was read again; a ratio's lengths are named. */
export function readAgain({ trait, lineage, voice, text }: LineageView): string[] {
  // one statement for each row of the repeats, in their order
  const said = trait.statements.filter(({ kind }) => kind === 'repeats');
  return trait.repeats.map(({ measurement }, index) => {
    const sentence = sayStatement(said[index]!, voice);
    const measured = lineage.scheme?.measurements.find(({ id }) => id === measurement);
    const name = trait.kind === 'ratio' ? text(measured?.name) : '';
    return name ? `${name}: ${sentence}` : sentence;
  });
}
