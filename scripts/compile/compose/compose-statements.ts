import { createHash } from 'node:crypto';
import { trendMargin } from '../../../analysis/estimate/index.ts';
import {
  boundedSpanStatement,
  improbableStatement,
  leftOutStatement,
  modelStatement,
  placeStatement,
  repeatsStatement,
  sensitivityStatement,
  spanStatement,
  statement,
  valueStatement,
  type Statement,
} from '../../../analysis/statements/index.ts';
import type { CompiledTrait, CompiledValue } from '../contract.ts';
import { settleAll } from './rounding.ts';

type Kind = CompiledTrait['statements'][number]['kind'];
type Said = readonly [kind: Kind, taxon: string | undefined, said: Statement | undefined];
type BareTrait = Omit<CompiledTrait, 'statements'>;

/** Everything that pages say of a trait, as codes with arguments and a digest each; what has nothing to say is left out. */
export function composeStatements(trait: BareTrait, asked: string): CompiledTrait['statements'] {
  const isShare = [0, 100].every((end) => trait.marks.some(({ at }) => at === end));
  const said = [...trait.values.flatMap((value) => ofValue(value, isShare)), ...ofTrait(trait, asked)];
  return said.flatMap(([kind, taxon, what]) => (what ? [withDigest(trait.id, kind, taxon, what)] : []));
}

function ofValue(value: CompiledValue, isShare: boolean): Said[] {
  const { taxon, limits, span, conditional, status } = value;
  return [
    ['value', taxon, valueStatement(value)],
    ['place', taxon, isShare ? placeStatement(value) : undefined],
    ['limit', taxon, limits && improbableStatement(limits.specimen, limits.probability)],
    ['span', taxon, span && status === 'inferred' ? spanStatement(span) : undefined],
    ['span', taxon, span && conditional && boundedSpanStatement(conditional.interval, span)],
    ['unknown', taxon, value.reason === undefined ? undefined : statement(`unknown.${value.reason}`)],
  ];
}

function ofTrait({ model, repeats, unit, sensitivity, leaveOneOut }: BareTrait, asked: string): Said[] {
  // what was read again is the trait itself, or one of its lengths
  const readAgain = repeats.map((each): Said => [
    'repeats',
    undefined,
    repeatsStatement(each, each.measurement === undefined ? unit : 'mm'),
  ]);
  if (!model) return readAgain;
  const used = model.compared.find(({ name }) => name === model.name)?.aicc ?? null;
  return [
    ['left-out', undefined, leftOutStatement(leaveOneOut)],
    ['model', undefined, modelStatement({ ...model, asked, margin: trendMargin })],
    ['limit', undefined, model.limits.reported ? undefined : statement('limit.unsettled')],
    ...sensitivity.map((each): Said => ['sensitivity', undefined, sensitivityStatement(each, used)]),
    ...readAgain,
  ];
}

function withDigest(
  trait: string,
  kind: Kind,
  taxon: string | undefined,
  { code, args }: Statement,
): CompiledTrait['statements'][number] {
  const settled = settleAll(args) as Statement['args']; // the same arguments with settled numbers
  const text = JSON.stringify([kind, trait, taxon ?? null, code, Object.entries(settled).sort()]);
  const digest = createHash('sha256').update(text).digest('hex').slice(0, 16);
  return { kind, ...(taxon === undefined ? {} : { taxon }), code, args: { ...settled }, digest };
}
