import { TreeTextError } from './tree-text-error.ts';

/** A word, quoted or not, or one mark of punctuation, with its offset in the text. */
export interface TreeToken {
  readonly kind: 'word' | 'quoted' | 'mark' | 'end';
  readonly text: string;
  readonly offset: number;
}

const marks = new Set('(),:;=');
const space = /\s/;

/** Reads the tokens of Newick and NEXUS text one at a time; comments in square brackets may nest and are passed over. */
export class TreeTokens {
  readonly text: string;
  #offset: number;

  constructor(text: string, offset = 0) {
    this.text = text;
    this.#offset = offset;
  }

  /** Where the next token is looked for. */
  get offset(): number {
    return this.#offset;
  }

  /** The next token, which stays next. */
  peek(): TreeToken {
    const at = this.#offset;
    const token = this.next();
    this.#offset = at;
    return token;
  }

  /** The next token; kind `end` after the last. */
  next(): TreeToken {
    this.#passSpace();
    const offset = this.#offset;
    const first = this.text[offset];
    if (first === undefined) return { kind: 'end', text: '', offset };
    if (first === "'") return { kind: 'quoted', text: this.#quoted(), offset };
    if (marks.has(first)) {
      this.#offset++;
      return { kind: 'mark', text: first, offset };
    }
    return { kind: 'word', text: this.#word(), offset };
  }

  #passSpace(): void {
    for (; this.#offset < this.text.length; this.#offset++) {
      const here = this.text[this.#offset]!;
      if (here === '[') this.#passComment();
      else if (!space.test(here)) return;
    }
  }

  #passComment(): void {
    const start = this.#offset;
    for (let depth = 0; this.#offset < this.text.length; this.#offset++) {
      const here = this.text[this.#offset];
      if (here === '[') depth++;
      else if (here === ']' && --depth === 0) return;
    }
    throw new TreeTextError(this.text, start, 'comment is never closed: expected "]"');
  }

  #quoted(): string {
    const start = this.#offset++;
    let word = '';
    for (;;) {
      const close = this.text.indexOf("'", this.#offset);
      if (close === -1)
        throw new TreeTextError(this.text, start, 'quoted name is never closed: expected "\'"');
      word += this.text.slice(this.#offset, close);
      this.#offset = close + 1;
      if (this.text[this.#offset] !== "'") return word;
      word += "'";
      this.#offset++;
    }
  }

  #word(): string {
    const start = this.#offset;
    for (; this.#offset < this.text.length; this.#offset++) {
      const here = this.text[this.#offset]!;
      if (marks.has(here) || here === '[' || here === "'" || space.test(here)) break;
      if (here === ']')
        throw new TreeTextError(this.text, this.#offset, 'unexpected "]": no comment is open');
    }
    return this.text.slice(start, this.#offset);
  }
}
