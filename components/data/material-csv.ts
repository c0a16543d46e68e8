import type { CompiledLineage } from '../../scripts/compile/contract.ts';
import { toCsv } from './csv.ts';
import { softParts } from './soft-parts.ts';

const start = (lineage: CompiledLineage) => [lineage.lineage, lineage.about.invented];

const completenessHeader = [
  'lineage',
  'invented',
  'taxon',
  'specimens',
  'bestPercent',
  'togetherPercent',
  'element',
  'elementPercent',
  'charactersScored',
  'characters',
  'scoredPercent',
  'contentDigest',
];

/** How much of each animal there is, an element of an animal a row; one row without an element where none is there. */
export function completenessCsv(lineage: CompiledLineage): string {
  const { taxa = [], characters = 0 } = lineage.completeness ?? {};
  const rows = taxa.flatMap(({ taxon, specimens, best, together, elements, scored, scoredPercent }) =>
    (elements.length > 0 ? elements : [undefined]).map((own) => [
      ...start(lineage),
      taxon,
      specimens,
      best,
      together,
      own?.element,
      own?.percent,
      scored,
      characters,
      scoredPercent,
      lineage.contentDigest,
    ]),
  );
  return toCsv(completenessHeader, rows);
}

const featuresHeader = [
  'lineage',
  'invented',
  'character',
  'ordered',
  'taxaScored',
  'steps',
  'fewestSteps',
  'mostSteps',
  'consistencyIndex',
  'retentionIndex',
  'ratePerMyr',
  'logLikelihood',
  'onBound',
  'node',
  'state',
  'probability',
  'contentDigest',
];

/** Each feature of the skeleton on the reference tree, a state at a fork a row. */
export function featuresCsv(lineage: CompiledLineage): string {
  const features = (lineage.characters ?? []).filter(({ softPart }) => !softPart);
  const rows = features.flatMap(({ id, ordered, scored, states, steps, fit, rate }) => {
    const forks = (rate?.forks ?? []).flatMap(({ node, shares }) =>
      shares.map((share, place) => [node, states[place]!.id, share]),
    );
    return (forks.length > 0 ? forks : [[undefined, undefined, undefined]]).map((fork) => [
      ...start(lineage),
      id,
      ordered,
      scored.length,
      steps,
      fit?.minimum,
      fit?.maximum,
      fit?.consistency,
      fit?.retention,
      rate?.perMyr,
      rate?.logLikelihood,
      rate?.onBound,
      ...fork,
      lineage.contentDigest,
    ]);
  });
  return toCsv(featuresHeader, rows);
}

const softHeader = [
  'lineage',
  'invented',
  'character',
  'taxon',
  'nearLiving',
  'nearHasIt',
  'farLiving',
  'farHasIt',
  'markOnBone',
  'levels',
  'verdicts',
  'contentDigest',
];

/** What living relatives say of each soft part, a fossil a row; what is not known is empty. */
export function softPartsCsv(lineage: CompiledLineage): string {
  const rows = softParts(lineage).flatMap(({ character, softPart }) =>
    softPart.brackets.map(({ taxon, sides: [near, far], sign, readings }) => [
      ...start(lineage),
      character.id,
      taxon,
      near?.living.join(' '),
      near?.has,
      far?.living.join(' '),
      far?.has,
      sign,
      readings.map(({ level, prime }) => (prime ? `${level}'` : level)).join(' '),
      [...new Set(readings.map(({ verdict }) => verdict))].join('; '),
      lineage.contentDigest,
    ]),
  );
  return toCsv(softHeader, rows);
}
