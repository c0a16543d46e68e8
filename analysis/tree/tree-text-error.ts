/** A mistake in the text of a tree, with its place: line and column count from 1. */
export class TreeTextError extends Error {
  override readonly name = 'TreeTextError';
  readonly line: number;
  readonly column: number;
  /** What is wrong, without the place. */
  readonly reason: string;

  constructor(text: string, offset: number, reason: string) {
    const before = text.slice(0, offset).split(/\r\n|\r|\n/);
    const line = before.length;
    const column = before[line - 1]!.length + 1;
    super(`${line}:${column}  ${reason}`);
    this.line = line;
    this.column = column;
    this.reason = reason;
  }
}
