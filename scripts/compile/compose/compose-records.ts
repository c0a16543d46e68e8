import type { AnalysedLineage } from '../analyse/lineage.ts';
import type { CompiledLineage, CompiledSpecimen, CompiledTaxon, CompiledTree } from '../contract.ts';
import { ageText, type ResolvedAge } from '../resolve/ages.ts';
import type { ResolvedSpecimen } from '../resolve/specimens.ts';
import type { Horizon, Specimen, Taxon } from '../schema/index.ts';
import type { DatedLineageTree } from '../analyse/date-trees.ts';
import { composePictures } from './compose-pictures.ts';
import { lastLimitOf } from './compose-ages.ts';
import { specimenLabel } from './specimen-label.ts';
import { specimenValues } from './specimen-values.ts';

type CompiledAge = NonNullable<CompiledTaxon['age']>;
type CompiledHorizon = CompiledLineage['horizons'][number];

/** Horizons as the pages read them; one whose age could not be worked out stops the compile before this. */
export function composeHorizons(analysed: AnalysedLineage): CompiledHorizon[] {
  const { records, horizonAges } = analysed.lineage;
  return records.horizons.records.map(({ value }) => composeHorizon(value, horizonAges.get(value.id)!));
}

function composeHorizon(
  { id, formation, member, bed, sources = [] }: Horizon,
  age: ResolvedAge,
): CompiledHorizon {
  const name = member === undefined ? formation : `${formation}, ${member}`;
  return { id, formation: name, ...(bed === undefined ? {} : { bed }), age: composeAge(age), sources };
}

function composeAge(age: ResolvedAge): CompiledAge {
  return { from: age.from, to: age.to, text: ageText(age), basis: age.basis };
}

/** Taxa as the pages read them. */
export function composeTaxa(analysed: AnalysedLineage): CompiledTaxon[] {
  return analysed.lineage.records.taxa.records.map(({ value }) => composeTaxon(value, analysed));
}

function composeTaxon(taxon: Taxon, analysed: AnalysedLineage): CompiledTaxon {
  const { horizons, age } = analysed.ages.get(taxon.id)!;
  const specimens = analysed.lineage.specimens.filter(({ record }) => record.value.taxon === taxon.id);
  const reference = analysed.trees.find((tree) => tree.reference);
  return {
    id: taxon.id,
    name: taxon.scientificName,
    ...present({
      authorship: taxon.scientificNameAuthorship,
      vernacular: taxon.vernacularName,
      note: taxon.note,
    }),
    living: taxon.living,
    role: taxon.role,
    finds: {
      first: age?.from ?? null,
      last: age?.to ?? null,
      horizons,
      ...lastLimitOf(taxon, horizons, age),
    },
    age: age ? composeAge(age) : null,
    inTree: reference?.taxa.has(taxon.id) ?? false,
    specimens: specimens.map(({ record }) => record.value.id),
    sources: taxon.sources ?? [],
  };
}

/** Specimens as the pages read them, with every value that each yields. */
export function composeSpecimens(analysed: AnalysedLineage): CompiledSpecimen[] {
  const values = specimenValues(analysed);
  return analysed.lineage.specimens.map((specimen) =>
    composeSpecimen(specimen, values.get(specimen) ?? [], analysed),
  );
}

function composeSpecimen(
  specimen: ResolvedSpecimen,
  values: CompiledSpecimen['values'],
  analysed: AnalysedLineage,
): CompiledSpecimen {
  const { record, digitisings } = specimen;
  const { value } = record;
  const cast = /^cast of: (\S+)$/.exec(value.preparations)?.[1];
  const age = value.horizon === undefined ? undefined : analysed.lineage.horizonAges.get(value.horizon);
  return {
    id: value.id,
    taxon: value.taxon,
    label: specimenLabel(value),
    ...present({ typeStatus: value.typeStatus, castOf: cast }),
    kind: kindOf(value),
    horizon: value.horizon ?? null,
    age: age ? composeAge(age) : null,
    lifeStage: value.lifeStage,
    elements: value.elements.map(({ element, side, preserved }) => ({
      element,
      ...present({ side }),
      preserved,
    })),
    lost: value.lost.map(({ landmark }) => landmark),
    mirrored: digitisings.some(({ source }) => source.mirrored === true),
    sources: value.sources ?? [],
    values,
    ...(value.pictures.length > 0
      ? { pictures: composePictures(specimen, analysed.lineage.records.pictures) }
      : {}),
  };
}

function kindOf(specimen: Specimen): CompiledSpecimen['kind'] {
  if (specimen.preparations.startsWith('cast')) return 'cast';
  if (specimen.preparations === 'mould' || specimen.preparations === 'model') return specimen.preparations;
  const recent = specimen.preparations === 'skeleton' || specimen.basisOfRecord === 'PreservedSpecimen';
  return recent ? 'recent' : 'fossil';
}

/** Trees as the pages read them: tips are named by taxon id, forks by number from the root. */
export function composeTrees(trees: readonly DatedLineageTree[]): CompiledTree[] {
  return trees.map(({ id, authored, dated, dating, reference }) => {
    const ids = nodeIds(dated.label);
    const nodes = ids.map((node, index) => ({
      id: node,
      parent: ids[dated.parent[index]!] ?? null,
      ageMa: dated.ageMa[index]!,
      ...present({ taxon: dated.label[index] || undefined }),
    }));
    return { id, reference, ...present({ source: authored.source }), dating: dating.rule, nodes };
  });
}

/** An id for each node of a tree: a tip's taxon, or `fork-N` counted from the root. */
export function nodeIds(label: readonly string[]): string[] {
  let forks = label.filter((name) => name === '').length;
  return label.map((name) => name || `fork-${forks--}`);
}

function present<T extends object>(fields: T): { [K in keyof T]?: NonNullable<T[K]> } {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: NonNullable<T[K]>;
  }; // only undefined is dropped
}
