import { readFile, readdir, realpath, stat } from 'node:fs/promises';
import { isAbsolute, join, relative, sep } from 'node:path';
import type { Report } from '../findings/report.ts';
import { sourceText, wholeFile, type SourceText } from '../source/source-text.ts';

/** A lineage folder opened for reading: where it is, its name, and which files it holds. */
export interface LineageFolder {
  path: string;
  id: string;
  /** How findings name the folder: as seen from where the author stands. */
  shown: string;
  /** Paths with forward slashes from the folder, sorted. */
  files: string[];
}

const largestTextBytes = 40_000_000;
const skipped = new Set(['node_modules', '.git']);

/** Lists a lineage folder, links that lead out of it left aside; files whose names begin with a point are not content. */
export async function openFolder(path: string): Promise<LineageFolder> {
  const root = await realpath(path);
  const files: string[] = [];
  await walk(root, root, files);
  return { path: root, id: root.split(sep).at(-1)!, shown: shownPath(root), files: files.sort() };
}

function shownPath(root: string): string {
  const path = relative(process.env['INIT_CWD'] ?? process.cwd(), root);
  const inside = path !== '' && !path.startsWith('..') && !isAbsolute(path);
  return (inside ? path : root).split(sep).join('/');
}

/** A file of the folder that does not exist, as a source, so that findings can name it. */
export function absentFile(folder: LineageFolder, file: string): SourceText {
  return sourceText(`${folder.shown}/${file}`, '');
}

async function walk(root: string, folder: string, files: string[]): Promise<void> {
  for (const entry of await readdir(folder, { withFileTypes: true })) {
    if (entry.name.startsWith('.') || skipped.has(entry.name)) continue;
    const path = join(folder, entry.name);
    if (entry.isDirectory()) await walk(root, path, files);
    else if (entry.isFile()) files.push(relative(root, path).split(sep).join('/').normalize('NFC'));
  }
}

/** Reads one text file as UTF-8. Undefined after a finding when it is too big or in another encoding. */
export async function readText(
  folder: LineageFolder,
  file: string,
  report: Report,
): Promise<SourceText | undefined> {
  const name = `${folder.shown}/${file}`;
  try {
    const path = join(folder.path, file);
    const { size } = await stat(path);
    if (size <= largestTextBytes) return decode(await readFile(path), name, report);
    report.add(
      'file-too-big',
      wholeFile(sourceText(name, '')),
      `${file} has ${size} bytes; at most ${largestTextBytes} are read`,
      'split the table, or leave out what is not used',
    );
  } catch (error) {
    const reason = (error as NodeJS.ErrnoException).code ?? String(error); // what the file system throws
    report.add(
      'unreadable-file',
      wholeFile(sourceText(name, '')),
      `${file} cannot be read: ${reason}`,
      'close other programs that hold it, and look at its permissions',
    );
  }
  return undefined;
}

function decode(bytes: Uint8Array, name: string, report: Report): SourceText | undefined {
  try {
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
    if (text.includes('\0')) return refuse(bytes, name, 'holds bytes of zero: UTF-16, or not a text', report);
    return sourceText(name, text);
  } catch {
    const wide = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
    return refuse(
      bytes,
      name,
      wide ? 'is UTF-16' : 'is not UTF-8 (perhaps Windows-1252 or Mac Roman)',
      report,
    );
  }
}

function refuse(bytes: Uint8Array, name: string, problem: string, report: Report): undefined {
  const source = sourceText(name, new TextDecoder('latin1').decode(bytes).replaceAll('\0', ' '));
  const odd = source.text.search(/[^\x20-\x7e\n\t]/);
  const start = Math.max(0, odd);
  report.add(
    'not-utf8',
    { source, start, end: start + 1 },
    `the file ${problem}`,
    'save it again with the encoding UTF-8',
  );
  return undefined;
}
