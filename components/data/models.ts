import type { CompiledLineage, CompiledTrait } from '../../scripts/compile/contract.ts';
import type { Voice } from '../messages/say.ts';
import { toCsv } from './csv.ts';

/** A model of a trait: one that estimates may rest on, or one that only shows how much the choice matters. */
export interface ModelRow {
  name: 'brownian' | 'trend' | 'lambda' | 'pull';
  used: boolean;
  /** Slope a million years on the model's scale, Pagel's lambda, or the pull. */
  parameter?: number;
  onBound?: 'lowest' | 'highest';
  logLikelihood: number;
  parameters: number;
  aicc: number | null;
}

/** The models of a trait, those to choose from first. */
export function findModels({ model, sensitivity }: CompiledTrait): ModelRow[] {
  if (!model) return [];
  const { slope } = model;
  return [
    ...model.compared.map(({ name, logLikelihood, parameters, aicc }): ModelRow => ({
      name: name === 'trend' ? 'trend' : 'brownian',
      used: name === model.name,
      ...(name === 'trend' && slope && { parameter: slope.median }),
      logLikelihood,
      parameters,
      aicc,
    })),
    ...sensitivity.map(({ name, parameter, onBound, logLikelihood, parameters, aicc }): ModelRow => ({
      name,
      used: false,
      parameter,
      ...(onBound && { onBound }),
      logLikelihood,
      parameters,
      aicc,
    })),
  ];
}

/** A number of any size with three digits that count. */
export function significant(value: number, voice: Voice): string {
  const places = value === 0 ? 0 : Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value))));
  return voice.number(value, Math.min(places, 8));
}

const header = [
  'lineage',
  'invented',
  'trait',
  'scale',
  'model',
  'used',
  'parameter',
  'onBound',
  'logLikelihood',
  'parameters',
  'aicc',
  'tree',
  'rateMedian',
  'rateReml',
  'rateDf',
  'pooledVariance',
  'pooledDf',
  'contentDigest',
];

/** The models of every trait, one a row; rates are those of the model that is used, on the scale named. */
export function modelsCsv(lineage: CompiledLineage): string {
  const rows = lineage.traits.flatMap((trait) =>
    findModels(trait).map((row) => [
      lineage.lineage,
      lineage.about.invented,
      trait.id,
      trait.scale,
      row.name,
      row.used,
      row.parameter,
      row.onBound,
      row.logLikelihood,
      row.parameters,
      row.aicc,
      trait.model!.tree,
      row.used ? trait.model!.rateMedian : undefined,
      row.used ? trait.model!.rateReml : undefined,
      row.used ? trait.model!.df : undefined,
      trait.pooled?.variance,
      trait.pooled?.df,
      lineage.contentDigest,
    ]),
  );
  return toCsv(header, rows);
}
