/** One authored file in memory: its path as the author knows it, its text with LF line ends, and where lines begin. */
export interface SourceText {
  file: string;
  text: string;
  lineStarts: number[];
}

/** A stretch of an authored file, by offsets into its text; `end` is past the last character. */
export interface Span {
  source: SourceText;
  start: number;
  end: number;
}

/** A place in a file as editors count: both from one. */
export interface Position {
  line: number;
  column: number;
}

/** Takes a text under the name that findings print; line ends become LF and a byte order mark is dropped. */
export function sourceText(file: string, raw: string): SourceText {
  const text = raw.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const lineStarts = [0];
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) lineStarts.push(at + 1);
  return { file, text, lineStarts };
}

/** Line and column of an offset; an offset past the end is taken as the end. */
export function positionAt(source: SourceText, offset: number): Position {
  const at = Math.max(0, Math.min(offset, source.text.length));
  let low = 0;
  let high = source.lineStarts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (source.lineStarts[middle]! <= at) low = middle;
    else high = middle - 1;
  }
  return { line: low + 1, column: at - source.lineStarts[low]! + 1 };
}

/** Text of a line counted from one, without its line end; empty past the last line. */
export function lineText(source: SourceText, line: number): string {
  const start = source.lineStarts[line - 1];
  if (start === undefined) return '';
  const next = source.lineStarts[line];
  return source.text.slice(start, next === undefined ? source.text.length : next - 1);
}

/** The first character of a file, for a finding about the file as a whole. */
export function wholeFile(source: SourceText): Span {
  return { source, start: 0, end: Math.min(1, source.text.length) };
}
