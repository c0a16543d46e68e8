import { positionAt, type SourceText, type Span } from '../source/source-text.ts';
import { severities, type FindingCode, type Severity } from './codes.ts';
import { frameOf } from './frame.ts';

/** One thing that an author should mend or know, where it is, and what to do about it. */
export interface Finding {
  severity: Severity;
  code: FindingCode;
  file: string;
  line: number;
  column: number;
  endColumn: number;
  frame: string;
  message: string;
  advice: string;
}

/** Collects the findings of one compile. */
export interface Report {
  /** Adds a finding; a message that is costly to word is given as a function, and asked for only where it is kept. */
  add(code: FindingCode, span: Span, message: string | (() => string), advice: string): void;
  /** Whether no more findings of a kind in a file are kept, so that their place need not be looked for. */
  isFull(code: FindingCode, source: SourceText): boolean;
  /** All findings, by file, line and column; the same one is told once. */
  list(): Finding[];
  hasErrors(): boolean;
}

/** One mistake in a header is a mistake in every row: so many of a kind are told of a file, and the rest counted. */
const mostOfAKind = 50;

/** Opens an empty report. */
export function openReport(): Report {
  const found = new Map<string, Finding>();
  const counts = new Map<string, number>();
  let errors = 0;
  const kind = (code: FindingCode, source: SourceText) => `${code}\0${source.file}`;
  const isFull = (code: FindingCode, source: SourceText) =>
    (counts.get(kind(code, source)) ?? 0) >= mostOfAKind;
  return {
    add(code, span, message, advice) {
      if (severities[code] === 'error') errors++;
      const own = kind(code, span.source);
      const count = counts.get(own) ?? 0;
      if (count < mostOfAKind) {
        const finding = findingOf(code, span, typeof message === 'string' ? message : message(), advice);
        const key = [finding.file, finding.line, finding.column, code, finding.message].join('\0');
        if (found.has(key)) return;
        found.set(key, finding);
      }
      counts.set(own, count + 1);
    },
    isFull,
    list: () => withCounts([...found.values()].sort(byPlace), counts),
    hasErrors: () => errors > 0,
  };
}

/** Says of the last finding of a kind in a file how many more there are. */
function withCounts(findings: Finding[], counts: ReadonlyMap<string, number>): Finding[] {
  for (const [kind, count] of counts) {
    if (count <= mostOfAKind) continue;
    const last = findings.findLastIndex(({ code, file }) => `${code}\0${file}` === kind);
    const finding = findings[last]!;
    findings[last] = {
      ...finding,
      advice: `${finding.advice}; and ${count - mostOfAKind} more like this in this file`,
    };
  }
  return findings;
}

function findingOf(code: FindingCode, span: Span, message: string, advice: string): Finding {
  const from = positionAt(span.source, span.start);
  const to = positionAt(span.source, Math.max(span.end, span.start + 1));
  return {
    severity: severities[code],
    code,
    file: span.source.file,
    line: from.line,
    column: from.column,
    endColumn: to.line === from.line ? to.column : from.column + 1,
    frame: frameOf(span),
    message,
    advice,
  };
}

function byPlace(one: Finding, other: Finding): number {
  if (one.file !== other.file) return one.file < other.file ? -1 : 1;
  return one.line - other.line || one.column - other.column || (one.code < other.code ? -1 : 1);
}
