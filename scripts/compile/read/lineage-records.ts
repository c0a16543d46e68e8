import type { z } from 'zod';
import type { Report } from '../findings/report.ts';
import {
  fileSchemas,
  type AuthoredLineage,
  type ListKind,
  type Scheme,
  type Section,
} from '../schema/index.ts';
import { parseCsv, type CsvTable } from '../source/csv-source.ts';
import { wholeFile, type SourceText } from '../source/source-text.ts';
import { parseYaml, type Located } from '../source/yaml-source.ts';
import { noEntries, readEntries, type Entries, type EntryOf } from './entries.ts';
import { absentFile, readText, type LineageFolder } from './files.ts';
import { pictureFiles, type PictureFile } from './picture-file.ts';
import { readReferences, type Reference } from './references.ts';
import { checkShape } from './shape.ts';

/** All that a lineage folder says, checked for shape only. */
export interface LineageRecords {
  folder: LineageFolder;
  lineage: Located<AuthoredLineage> | undefined;
  scheme: Located<Scheme> | undefined;
  section: Located<Section> | undefined;
  horizons: Entries<EntryOf<'horizons'>>;
  taxa: Entries<EntryOf<'taxa'>>;
  specimens: Entries<EntryOf<'specimens'>>;
  traits: Entries<EntryOf<'traits'>>;
  characters: Entries<EntryOf<'characters'>>;
  glossary: Entries<EntryOf<'glossary'>>;
  private: Entries<EntryOf<'private'>>;
  references: Reference[];
  /** False when references.bib could not be read as a whole. */
  referencesRead: boolean;
  referencesFile: SourceText;
  sheets: Map<string, CsvTable>;
  treeFiles: Map<string, SourceText>;
  pictures: Map<string, PictureFile>;
  /** Drawings by hand, as texts. */
  drawings: Map<string, SourceText>;
  /** Language to the text of its story. */
  stories: Map<string, SourceText>;
}

const needed = ['lineage.yaml', 'taxa.yaml', 'traits.yaml'];

/** Reads every record of a folder. All mistakes of form go to the report at once. */
export async function readRecords(folder: LineageFolder, report: Report): Promise<LineageRecords> {
  for (const file of needed) {
    if (folder.files.includes(file)) continue;
    report.add(
      'missing-file',
      wholeFile(absentFile(folder, file)),
      `there is no ${file}`,
      `add ${file} to the folder of the lineage`,
    );
  }
  const texts = await readTexts(folder, report);
  const list = <K extends ListKind>(kind: K): Entries<EntryOf<K>> => {
    const source = texts.get(`${kind}.yaml`);
    // A file that is there but was not decoded, or that is needed and missing, is told once; its ids are not known.
    const wanted = folder.files.includes(`${kind}.yaml`) || needed.includes(`${kind}.yaml`);
    return source ? readEntries(kind, source, report) : { ...noEntries<EntryOf<K>>(), whole: !wanted };
  };
  const single = <S extends z.ZodType>(file: string, schema: S) =>
    readSingle(texts.get(file), schema, report);
  const bibliography = texts.get('references.bib');
  const references = bibliography && readReferences(bibliography, report);
  return {
    folder,
    lineage: single('lineage.yaml', fileSchemas.lineage),
    scheme: single('scheme.yaml', fileSchemas.scheme),
    section: single('section.yaml', fileSchemas.section),
    horizons: list('horizons'),
    taxa: list('taxa'),
    specimens: list('specimens'),
    traits: list('traits'),
    characters: list('characters'),
    glossary: list('glossary'),
    private: list('private'),
    references: references ?? [],
    referencesRead: references !== undefined || !folder.files.includes('references.bib'),
    referencesFile: bibliography ?? absentFile(folder, 'references.bib'),
    sheets: sheetsOf(texts, report),
    pictures: await pictureFiles(folder),
    drawings: new Map([...texts].filter(([file]) => drawingFile.test(file))),
    treeFiles: new Map([...texts].filter(([file]) => treeFile.test(file))),
    stories: new Map(
      [...texts].flatMap(([file, text]) => (storyFile.test(file) ? [[storyFile.exec(file)![1]!, text]] : [])),
    ),
  };
}

const storyFile = /^story\.([A-Za-z-]+)\.mdx$/;
const drawingFile = /^drawings\/.*\.svg$/i;
const treeFile = /\.(nwk|newick|nex|nexus|tre|tree|trees)$/i;
const textFile = /^[a-z]+\.yaml$|^references\.bib$|^sheets\/.*\.csv$/;

async function readTexts(folder: LineageFolder, report: Report): Promise<Map<string, SourceText>> {
  const wanted = folder.files.filter(
    (file) => textFile.test(file) || storyFile.test(file) || treeFile.test(file) || drawingFile.test(file),
  );
  const texts = await Promise.all(wanted.map((file) => readText(folder, file, report)));
  return new Map(wanted.flatMap((file, index) => (texts[index] ? [[file, texts[index]] as const] : [])));
}

function readSingle<S extends z.ZodType>(
  source: SourceText | undefined,
  schema: S,
  report: Report,
): Located<z.output<S>> | undefined {
  const record = source && parseYaml(source, report);
  if (!record) return undefined;
  const value = checkShape(record, schema, report);
  return value === undefined ? undefined : { ...record, value };
}

function sheetsOf(texts: Map<string, SourceText>, report: Report): Map<string, CsvTable> {
  const sheets = [...texts].filter(([file]) => file.endsWith('.csv'));
  return new Map(sheets.map(([file, text]) => [file, parseCsv(text, report)]));
}
