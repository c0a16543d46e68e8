import { parse, type Entry } from '@retorquere/bibtex-parser';
import type { Report } from '../findings/report.ts';
import type { SourceText, Span } from '../source/source-text.ts';

/** One entry of references.bib, its LaTeX turned into plain text. */
export interface Reference {
  key: string;
  type: string;
  fields: Entry['fields'];
  span: Span;
}

/** Reads a BibTeX file. Entries that cannot be read are reported, and undefined comes back when keys may have been lost with them. */
export function readReferences(source: SourceText, report: Report): Reference[] | undefined {
  const library = parseLibrary(source, report);
  if (!library) return undefined;
  for (const { error } of library.errors)
    report.add(
      'bibtex-syntax',
      errorSpan(source, error),
      `not BibTeX: ${plain(error)}`,
      'close the braces of the entry, and put a comma between its fields',
    );
  const references: Reference[] = [];
  const seen = new Set<string>();
  for (const entry of library.entries) {
    const span = keySpan(source, entry.key, seen.has(entry.key));
    if (seen.has(entry.key))
      report.add(
        'duplicate-id',
        span,
        `the key "${entry.key}" is given twice`,
        'rename or remove one of the entries',
      );
    else references.push({ key: entry.key, type: entry.type, fields: composed(entry.fields), span });
    seen.add(entry.key);
  }
  return library.errors.length > 0 ? undefined : references;
}

function parseLibrary(source: SourceText, report: Report): ReturnType<typeof parse> | undefined {
  try {
    return parse(source.text, { sentenceCase: false, english: false, unsupported: 'ignore' });
  } catch (error) {
    // The parser throws plain errors on LaTeX that it cannot read; the author needs the place, not the stack.
    const reason = error instanceof Error ? error.message : String(error);
    report.add(
      'bibtex-syntax',
      errorSpan(source, reason),
      `not BibTeX: ${plain(reason)}`,
      'write the field without LaTeX commands',
    );
    return undefined;
  }
}

function errorSpan(source: SourceText, error: string): Span {
  const place = /at line (\d+), column (\d+)/.exec(error);
  const start = place ? (source.lineStarts[Number(place[1]) - 1] ?? 0) + Number(place[2]) - 1 : 0;
  return { source, start, end: start + 1 };
}

function plain(error: string): string {
  const first = error.split('\n')[0]!.replace(/\.\.\. at line.*$| at line \d+.*$/, '');
  const named = first.replace(/ ".*$/, '');
  return named.charAt(0).toLowerCase() + named.slice(1, 160);
}

function keySpan(source: SourceText, key: string, again: boolean): Span {
  const escaped = key.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&');
  const found = [...source.text.matchAll(new RegExp(`@\\s*\\w+\\s*[{(]\\s*(${escaped})\\s*[,})]`, 'g'))];
  const match = found[again ? 1 : 0] ?? found[0];
  const start = match ? match.index + match[0].indexOf(match[1]!, match[0].search(/[{(]/)) : 0;
  return { source, start, end: start + key.length };
}

/** The parser leaves accents as marks of their own; sorting, initials and fonts want whole letters (Unicode NFC). */
function composed(fields: Entry['fields']): Entry['fields'] {
  return JSON.parse(JSON.stringify(fields).normalize('NFC')) as Entry['fields']; // the same shape, other code points
}
