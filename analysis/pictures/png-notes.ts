import { joinBytes, lettersAt, viewOf } from './bytes.ts';
import { hasPositionText, type CameraNotes } from './camera-notes.ts';
import { readExif } from './exif-block.ts';

/** Chunks that change how the picture looks: they stay, with all that a decoder must have. */
const kept = new Set(['tRNS', 'gAMA', 'cHRM', 'sRGB', 'iCCP', 'cICP', 'sBIT', 'pHYs', 'bKGD']);

/**
 * Size, orientation and position of a PNG (W3C PNG third edition), and the file without its notes: texts, Exif, times,
 * frames of an animation and everything behind the end go. Undefined for a file that breaks off before its picture.
 */
export function pngNotes(bytes: Uint8Array): CameraNotes | undefined {
  const chunks = chunksOf(bytes);
  if (
    chunks[0]?.name !== 'IHDR' ||
    !chunks.some(({ name }) => name === 'IDAT') ||
    chunks.at(-1)!.name !== 'IEND'
  )
    return undefined;
  const view = viewOf(bytes);
  const notes = chunks.filter(({ name }) => isNote(name));
  const exif = notes.find(({ name }) => name === 'eXIf');
  const facts = readExif(exif ? bytes.subarray(exif.start + 8, exif.end - 4) : new Uint8Array());
  const clean = joinBytes([
    bytes.subarray(0, 8),
    ...chunks.filter(({ name }) => !isNote(name)).map(({ start, end }) => bytes.subarray(start, end)),
  ]);
  return {
    width: view.getUint32(16),
    height: view.getUint32(20),
    orientation: facts.orientation,
    position: facts.position || notes.some(({ start, end }) => hasPositionText(bytes.subarray(start, end))),
    removed: clean.length < bytes.length,
    clean,
  };
}

/** A capital first letter marks what every decoder must understand. */
function isNote(name: string): boolean {
  return /^[a-z]/.test(name) && !kept.has(name);
}

function chunksOf(bytes: Uint8Array): { name: string; start: number; end: number }[] {
  const chunks = [];
  const view = viewOf(bytes);
  let at = 8;
  while (at + 12 <= bytes.length) {
    const end = at + 12 + view.getUint32(at);
    if (end > bytes.length) break;
    const name = lettersAt(bytes, at + 4, 4);
    chunks.push({ name, start: at, end });
    if (name === 'IEND') break;
    at = end;
  }
  return chunks;
}
