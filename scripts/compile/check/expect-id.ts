import { didYouMean } from '../findings/suggest.ts';
import type { Report } from '../findings/report.ts';
import type { IdSet } from './known.ts';
import type { Span } from '../source/source-text.ts';

/** Where records of a kind are written, for advice. */
const homes = {
  taxon: 'taxa.yaml',
  horizon: 'horizons.yaml',
  specimen: 'specimens.yaml',
  trait: 'traits.yaml',
  landmark: 'scheme.yaml',
  measurement: 'scheme.yaml',
  axis: 'scheme.yaml',
  view: 'scheme.yaml',
  reference: 'references.bib',
  term: 'glossary.yaml',
  level: 'the table of levels',
  'wear stage': 'section.yaml',
} as const;

export type Kind = keyof typeof homes;

/** Reports an id that leads nowhere, with the nearest one that leads somewhere; true when it is known. */
export function expectId(kind: Kind, id: string, known: IdSet, span: Span, report: Report): boolean {
  if (known.has(id)) return true;
  const code = kind === 'reference' ? 'unknown-reference' : 'unknown-id';
  report.add(
    code,
    span,
    () => `unknown ${kind}: "${id}"${didYouMean(id, known.keys())}`,
    `name one of ${homes[kind]}, or add it there`,
  );
  return false;
}

/** Reports a file that the folder does not hold; true when it does. */
export function expectFile(file: string, files: readonly string[], span: Span, report: Report): boolean {
  const path = file.normalize('NFC').replace(/^\.\//, '');
  if (path.startsWith('/') || /^[A-Za-z]:|\\/.test(path) || path.split('/').includes('..')) {
    report.add(
      'file-outside',
      span,
      `"${file}" is not a path inside the folder of the lineage`,
      'copy the file into the folder and name it from there, with forward slashes',
    );
    return false;
  }
  if (files.includes(path)) return true;
  report.add(
    'missing-file',
    span,
    `there is no file "${file}"${didYouMean(path, files)}`,
    'add the file, or correct its path from the folder of the lineage',
  );
  return false;
}
