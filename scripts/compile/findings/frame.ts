import { lineText, positionAt, type Span } from '../source/source-text.ts';

const widest = 100;

/**
 * The line of a span with carets under it, in two lines; a span over several lines is marked on its first.
 * A long line is cut around the span, with an ellipsis on the side that was cut.
 */
export function frameOf(span: Span): string {
  const from = positionAt(span.source, span.start);
  const text = lineText(span.source, from.line).replaceAll('\t', ' ');
  const length = Math.max(1, Math.min(span.end - span.start, text.length - from.column + 1));
  const cut = Math.max(0, Math.min(from.column - 1 - 20, text.length - widest));
  const start = from.column > widest - 20 ? cut : 0;
  const shown = text.slice(start, start + widest);
  const before = start > 0 ? '…' : '';
  const after = start + widest < text.length ? '…' : '';
  const gutter = `${from.line} | `;
  const carets = '^'.repeat(Math.min(length, Math.max(1, shown.length - (from.column - 1 - start))));
  const indent = ' '.repeat(before.length + from.column - 1 - start);
  return `${gutter}${before}${shown}${after}\n${' '.repeat(gutter.length - 2)}| ${indent}${carets}`;
}
