import {
  LineCounter,
  isAlias,
  isCollection,
  isMap,
  isNode,
  isPair,
  isScalar,
  parseDocument,
  visit,
  type Document,
} from 'yaml';
import type { Report } from '../findings/report.ts';
import { rememberLast } from './remember.ts';
import { positionAt, wholeFile, type SourceText, type Span } from './source-text.ts';

type Path = readonly PropertyKey[];

/** A value read from a file, with the means to say where any part of it stands. */
export interface Located<T> {
  value: T;
  /** The value as the author wrote it, before defaults. */
  raw: unknown;
  source: SourceText;
  /** Span of the value at a path, or of the nearest parent that was written. */
  at(path?: Path): Span;
  /** Span of a key inside the mapping at a path. */
  atKey(path: Path, key: string): Span;
  /** The characters that the author wrote for a scalar, such as `43.0`; undefined where none were. */
  writtenAt(path: Path): string | undefined;
}

const deepest = 24;
const mostAliases = 100;

/** Parses one YAML 1.2 file (core schema). Mistakes go to the report, and then nothing is returned. */
export const parseYaml = rememberLast(
  60,
  ({ file, text }: SourceText, _report: Report) => `${file}\0${text}`,
  parseAfresh,
);

function parseAfresh(source: SourceText, report: Report): Located<unknown> | undefined {
  if (bracketDepth(source.text) > deepest * 4) return tooDeep(source, report);
  const lines = new LineCounter();
  let doc: Document.Parsed;
  try {
    doc = parseDocument(source.text, {
      version: '1.2',
      schema: 'core',
      lineCounter: lines,
      prettyErrors: false,
      merge: false,
    });
  } catch (error) {
    if (error instanceof RangeError) return tooDeep(source, report);
    throw error;
  }
  if (doc.errors.length > 0) return syntaxErrors(doc, source, report);
  if (nodesTooDeep(doc)) return tooDeep(source, report);
  return hasPlainKeys(doc, source, report) ? plainValue(doc, source, report) : undefined;
}

/** A part of a located value as a located value of its own. */
export function within<T>(whole: Located<unknown>, path: Path, value: T): Located<T> {
  return {
    value,
    raw: value,
    source: whole.source,
    at: (inner = []) => whole.at([...path, ...inner]),
    atKey: (inner, key) => whole.atKey([...path, ...inner], key),
    writtenAt: (inner) => whole.writtenAt([...path, ...inner]),
  };
}

function plainValue(doc: Document.Parsed, source: SourceText, report: Report): Located<unknown> | undefined {
  try {
    const value: unknown = doc.toJS({ maxAliasCount: mostAliases });
    return { value, raw: value, source, ...positions(doc, source) };
  } catch (error) {
    if (!(error instanceof ReferenceError)) throw error;
    report.add(
      'too-many-aliases',
      wholeFile(source),
      `more than ${mostAliases} repeats by alias`,
      'write the values out',
    );
    return undefined;
  }
}

function positions(doc: Document, source: SourceText): Pick<Located<unknown>, 'at' | 'atKey' | 'writtenAt'> {
  const span = (range: readonly number[] | null | undefined): Span | undefined =>
    range ? { source, start: range[0]!, end: Math.max(range[1]!, range[0]! + 1) } : undefined;
  const at = (path: Path = []): Span => {
    for (let depth = path.length; depth >= 0; depth--) {
      const node = nodeAt(doc, path.slice(0, depth));
      if (isNode(node) && node.range) return span(depth === path.length ? node.range : firstToken(node))!;
    }
    return wholeFile(source);
  };
  return {
    at,
    atKey: (path, key) => {
      const map = nodeAt(doc, path);
      const pair = isMap(map)
        ? map.items.find((item) => isScalar(item.key) && String(item.key.value) === key)
        : undefined;
      return (isScalar(pair?.key) ? span(pair.key.range) : undefined) ?? at(path);
    },
    writtenAt: (path) => {
      const node = nodeAt(doc, path);
      return isScalar(node) && node.range ? source.text.slice(node.range[0], node.range[1]) : undefined;
    },
  };
}

/** For something that is missing, pointing at the first key of its parent reads better than marking all of it. */
function firstToken(node: unknown): readonly number[] {
  if (isCollection(node)) {
    const first = node.items[0];
    const key = isPair(first) ? first.key : first;
    if (isNode(key) && key.range) return isCollection(key) ? firstToken(key) : key.range;
  }
  return isNode(node) && node.range ? node.range : [0, 1];
}

function nodeAt(doc: Document, path: Path): unknown {
  return path.length === 0 ? doc.contents : doc.getIn(path, true);
}

function syntaxErrors(doc: Document.Parsed, source: SourceText, report: Report): undefined {
  let told = 0;
  for (const error of doc.errors) {
    // A bracket left open makes every line after it wrong: the first mistake of a line is the one to mend.
    const { line } = positionAt(source, error.pos[0]);
    if (line === told) continue;
    told = line;
    const span = { source, start: error.pos[0], end: error.pos[1] };
    if (error.code === 'DUPLICATE_KEY') {
      report.add('duplicate-key', span, 'the same key stands twice in one record', 'keep one of the two');
    } else {
      report.add('yaml-syntax', span, `not YAML: ${plainReason(error.message)}`, yamlAdvice(error));
    }
  }
  return undefined;
}

function plainReason(message: string): string {
  const first = message.split('\n')[0]!;
  return first.charAt(0).toLowerCase() + first.slice(1).replace(/\.$/, '');
}

function yamlAdvice({ code, message }: { code: string; message: string }): string {
  if (/end with a [\]}]/.test(message)) return 'close the bracket';
  if (code === 'TAB_AS_INDENT') return 'indent with spaces';
  if (code === 'BAD_INDENT') return 'line the keys of one record up under each other';
  if (code === 'MISSING_CHAR') return 'close the bracket or quotation mark, or put a space after the colon';
  return 'put a text that holds ": ", "#", brackets or quotation marks between quotation marks';
}

function tooDeep(source: SourceText, report: Report): undefined {
  report.add(
    'too-deep',
    wholeFile(source),
    `nested deeper than ${deepest} levels`,
    'records need five levels at most: look for a bracket left open',
  );
  return undefined;
}

/** YAML lets a list or a record be a key; in records that is always a bracket in the wrong place. */
function hasPlainKeys(doc: Document.Parsed, source: SourceText, report: Report): boolean {
  let plain = true;
  visit(doc, {
    Pair(_key, { key }) {
      if (!isCollection(key) && !isAlias(key)) return;
      const [start, end] = key.range ?? [0, 1];
      report.add(
        'yaml-syntax',
        { source, start, end },
        'a key is a list or a record',
        'write a name before the colon, or put a text that begins with a bracket between quotation marks',
      );
      plain = false;
    },
  });
  return plain;
}

function nodesTooDeep(doc: Document): boolean {
  let found = false;
  visit(doc, {
    Node(_key, node, path) {
      if (isAlias(node)) return undefined;
      if (path.length > deepest * 2) {
        found = true;
        return visit.BREAK;
      }
      return undefined;
    },
  });
  return found;
}

function bracketDepth(text: string): number {
  let depth = 0;
  let most = 0;
  for (const character of text) {
    if (character === '[' || character === '{') most = Math.max(most, ++depth);
    else if (character === ']' || character === '}') depth = Math.max(0, depth - 1);
  }
  return most;
}

/** Path of one item of a field that may be written as a single record or as a list. */
export function itemPath(record: Located<unknown>, key: string, index: number): PropertyKey[] {
  const { raw } = record;
  const written = raw !== null && typeof raw === 'object' ? (raw as Record<string, unknown>)[key] : undefined; // any object can be asked
  return Array.isArray(written) ? [key, index] : [key];
}
