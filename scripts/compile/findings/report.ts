import { positionAt, type Span } from '../source/source-text.ts';
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
  add(code: FindingCode, span: Span, message: string, advice: string): void;
  /** All findings, by file, line and column; the same one is told once. */
  list(): Finding[];
  hasErrors(): boolean;
}

/** Opens an empty report. */
export function openReport(): Report {
  const found = new Map<string, Finding>();
  let errors = 0;
  return {
    add(code, span, message, advice) {
      const finding = findingOf(code, span, message, advice);
      const key = [finding.file, finding.line, finding.column, code, message].join('\0');
      if (found.has(key)) return;
      found.set(key, finding);
      if (finding.severity === 'error') errors++;
    },
    list: () => [...found.values()].sort(byPlace),
    hasErrors: () => errors > 0,
  };
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
