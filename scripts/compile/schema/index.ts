/* The shape of every kind of record, once: types, checks and the editors' schemas all come from here. */
import { character, characters } from './characters.ts';
import { glossary, term } from './glossary.ts';
import { horizon, horizons } from './horizons.ts';
import { lineage } from './lineage.ts';
import { privateRecord, privateRecords } from './private.ts';
import { scheme } from './scheme.ts';
import { section } from './section.ts';
import { specimen, specimens } from './specimens.ts';
import { taxa, taxon } from './taxa.ts';
import { trait, traits } from './traits.ts';

/** Kind of record to the schema of its whole file. */
export const fileSchemas = {
  lineage,
  scheme,
  horizons,
  taxa,
  specimens,
  traits,
  characters,
  glossary,
  private: privateRecords,
  section,
} as const;

/** Kinds whose file is a list, to the schema of one entry. */
export const entrySchemas = {
  horizons: horizon,
  taxa: taxon,
  specimens: specimen,
  traits: trait,
  characters: character,
  glossary: term,
  private: privateRecord,
} as const;

export type RecordKind = keyof typeof fileSchemas;
export type ListKind = keyof typeof entrySchemas;

export type { AuthoredAge } from './age.ts';
export type { AuthoredCharacter } from './characters.ts';
export type { Term } from './glossary.ts';
export type { Horizon } from './horizons.ts';
export type { AuthoredLineage, AuthoredTree } from './lineage.ts';
export type { Axis, Landmark, LengthUnit, Measurement, Scheme, SheetMapping } from './scheme.ts';
export type { RockKind, Section } from './section.ts';
export type { LandmarkSource, LostLandmark, MeasuredRecord, Specimen } from './specimens.ts';
export type { Taxon } from './taxa.ts';
export type { Trait } from './traits.ts';
