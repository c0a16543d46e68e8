import type { CompiledLineage, Status } from '../../../scripts/compile/contract.ts';
import type { Voice } from '../../messages/say.ts';
import { isSectionOnly } from '../../section/section-view.ts';

/** What the values of a lineage rest on, a line for each mark. */
export interface CardCount {
  status: Status;
  text: string;
}

const statuses: readonly Status[] = ['measured', 'bounded', 'inferred', 'unknown'];

/** Animals by status for the trait that the pages open with, or crowns whole and worn of a section; none of nothing. */
export function cardCounts(lineage: CompiledLineage, voice: Voice): CardCount[] {
  if (isSectionOnly(lineage)) return crownCounts(lineage, voice);
  const trait = lineage.traits.find(({ id }) => id === lineage.about.focus) ?? lineage.traits[0];
  const count = (status: Status) => trait?.values.filter((value) => value.status === status).length ?? 0;
  return statuses
    .filter((status) => count(status) > 0)
    .map((status) => ({ status, text: voice.say(`index.count.${status}`, { count: count(status) }) }));
}

function crownCounts({ section }: CompiledLineage, voice: Voice): CardCount[] {
  const worn = section!.individuals.filter(({ atLeast }) => atLeast).length;
  const whole = section!.individuals.length - worn;
  const rows: CardCount[] = [
    { status: 'measured', text: voice.say('section.counts.whole', { count: whole }) },
    { status: 'bounded', text: voice.say('section.counts.worn', { count: worn }) },
  ];
  return rows.filter((_, index) => [whole, worn][index]! > 0);
}
