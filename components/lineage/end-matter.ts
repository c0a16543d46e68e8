import { roundedDown, roundedUp } from '../../analysis/statements/index.ts';
import type { CompiledValue } from '../../scripts/compile/contract.ts';
import type { LineageView } from './view.ts';

/** So many animals are named in one list; the table has them all. */
const mostNamed = 4;

/** What finds, trees or misses would change the page's values: one sentence each, from the records alone. */
export function mindChangers(view: LineageView): string[] {
  const { trait, voice } = view;
  const of = (status: CompiledValue['status']) =>
    trait.values.filter((value) => value.status === status).slice(0, mostNamed);
  const named = (key: 'minds.inferred' | 'minds.bounded', value: CompiledValue) =>
    voice.say(key, { name: nameOf(view, value.taxon), value: view.printed(value.taxon).printed });
  const missed = trait.leaveOneOut.filter(({ inside }) => !inside).length;
  const total = trait.leaveOneOut.length;
  const unknown = trait.values.filter(({ status }) => status === 'unknown').length;
  return [
    ...of('bounded').map((value) => named('minds.bounded', value)),
    ...of('inferred').map((value) => named('minds.inferred', value)),
    ...trait.values.flatMap((value) => spanSentence(view, value)).slice(0, mostNamed),
    ...(total > 0 ? [voice.say('minds.misses', { count: missed, total })] : []),
    ...(unknown > 0 ? [voice.say('minds.unknown_', { count: unknown })] : []),
  ];
}

/** What the record of rocks cannot say, counted from the records. */
export function rockGaps(view: LineageView): string[] {
  const { lineage, trait, voice } = view;
  const withFinds = lineage.taxa.filter(({ finds }) => finds.horizons.length > 0);
  const oneBed = withFinds.filter(({ finds }) => finds.horizons.length === 1).length;
  const without = trait.values.filter(({ status }) => status !== 'measured').length;
  const years = (age: number) => voice.number(age, 1);
  const longest = [...lineage.ghosts].sort((a, b) => b.fromMa - b.toMa - (a.fromMa - a.toMa))[0];
  const whose = longest?.taxon === undefined ? undefined : nameOf(view, longest.taxon);
  const silence = longest && {
    from: years(longest.fromMa),
    to: years(longest.toMa),
    length: years(longest.fromMa - longest.toMa),
  };
  return [
    voice.say('rocks.beds', { beds: lineage.horizons.length, specimens: lineage.specimens.length }),
    ...(oneBed > 0 ? [voice.say('rocks.oneBed', { count: oneBed, total: withFinds.length })] : []),
    ...(without > 0 ? [voice.say('rocks.without', { count: without, total: trait.values.length })] : []),
    ...(silence && whose !== undefined
      ? [voice.say(longest.toMa > 0 ? 'rocks.silence' : 'rocks.silenceToday', { ...silence, name: whose })]
      : []),
    ...(silence && whose === undefined ? [voice.say('rocks.silenceOfBranch', silence)] : []),
    voice.say('rocks.last'),
  ];
}

function nameOf(view: LineageView, taxon: string): string {
  return view.requireTaxon(taxon).name;
}

/** How far other trees and datings push the brackets of an animal, outward to whole units. */
function spanSentence(view: LineageView, { taxon, span, status }: CompiledValue): string[] {
  const [low, high] = span?.interval ?? [null, null];
  if (status !== 'inferred' || low === null || high === null) return [];
  const range = `${view.voice.number(roundedDown(low, 0), 0)}–${view.voice.number(roundedUp(high, 0), 0)}`;
  return [view.voice.say('minds.trees', { name: nameOf(view, taxon), range })];
}
