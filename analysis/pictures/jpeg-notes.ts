import { joinBytes, lettersAt, viewOf } from './bytes.ts';
import { hasPositionText, type CameraNotes } from './camera-notes.ts';
import { readExif } from './exif-block.ts';

interface Segment {
  marker: number;
  start: number;
  end: number;
}

const scanMarker = 0xda;
const endMarker = 0xd9;

/**
 * Size, orientation and position of a JPEG (ITU-T T.81, annex B), and the file without its notes: application segments but
 * JFIF, colour profile and colour transform go, comments go, and so does everything behind the end of the picture.
 * Undefined for a file that breaks off before its picture.
 */
export function jpegNotes(bytes: Uint8Array): CameraNotes | undefined {
  const segments = segmentsOf(bytes);
  const frame = segments.find(({ marker }) => isFrame(marker));
  if (!frame || frame.end - frame.start < 9 || !segments.some(({ marker }) => marker === scanMarker))
    return undefined;
  const view = viewOf(bytes);
  const dropped = segments.filter((segment) => isNote(segment, bytes));
  const kept = segments.filter((segment) => !isNote(segment, bytes));
  const exif = dropped.find(({ start }) => lettersAt(bytes, start + 4, 6) === 'Exif\0\0');
  const facts = readExif(exif ? bytes.subarray(exif.start + 10, exif.end) : new Uint8Array());
  const inText = dropped.some(({ start, end }) => hasPositionText(bytes.subarray(start, end)));
  const clean = joinBytes([
    bytes.subarray(0, 2),
    ...kept.map(({ start, end }) => bytes.subarray(start, end)),
    Uint8Array.of(0xff, endMarker),
  ]);
  return {
    height: view.getUint16(frame.start + 5),
    width: view.getUint16(frame.start + 7),
    orientation: facts.orientation,
    position: facts.position || inText,
    removed: dropped.length > 0 || bytes.length > clean.length,
    clean,
  };
}

/** Segments up to the end of the picture; a scan reaches over its coded data to the next marker. */
function segmentsOf(bytes: Uint8Array): Segment[] {
  const segments: Segment[] = [];
  const view = viewOf(bytes);
  let at = 2;
  while (at + 4 <= bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1]!;
    if (marker === endMarker) break;
    if (marker === 0xff) {
      at++;
      continue;
    }
    let end = at + 2 + view.getUint16(at + 2);
    if (end > bytes.length) break;
    if (marker === scanMarker) end = endOfScan(bytes, end);
    segments.push({ marker, start: at, end });
    at = end;
  }
  return segments;
}

/** Where coded data ends: at a marker that is neither a stuffed byte nor a restart. */
function endOfScan(bytes: Uint8Array, from: number): number {
  for (let at = from; at + 1 < bytes.length; at++) {
    const next = bytes[at + 1]!;
    if (bytes[at] === 0xff && next !== 0 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  return bytes.length;
}

function isFrame(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
}

function isNote({ marker, start }: Segment, bytes: Uint8Array): boolean {
  if (marker === 0xfe) return true;
  if (marker < 0xe0 || marker > 0xef) return false;
  const name = lettersAt(bytes, start + 4, 12);
  return !(
    (marker === 0xe0 && name.startsWith('JFIF\0')) ||
    (marker === 0xe2 && name.startsWith('ICC_PROFILE\0')) ||
    (marker === 0xee && name.startsWith('Adobe'))
  );
}
