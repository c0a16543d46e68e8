import { viewOf } from './bytes.ts';

/** What a block of Exif says that matters here. */
export interface ExifFacts {
  /** 1 for upright, 2 to 8 for turned or mirrored as Exif 2.32 (CIPA DC-008), tag 0x0112, numbers them. */
  readonly orientation: number;
  /** A position was written where the picture was taken. */
  readonly position: boolean;
}

const orientationTag = 0x0112;
const positionBlockTag = 0x8825;
const latitudeTag = 0x0002;

/** Reads a TIFF-shaped block of Exif, without its `Exif\0\0`; a broken one says that the picture is upright and nowhere. */
export function readExif(block: Uint8Array): ExifFacts {
  const facts = { orientation: 1, position: false };
  if (block.length < 8) return facts;
  const view = viewOf(block);
  const little = view.getUint16(0) === 0x4949;
  if (!little && view.getUint16(0) !== 0x4d4d) return facts;
  const main = entriesAt(view, view.getUint32(4, little), little);
  const orientation = main.get(orientationTag);
  const positionAt = main.get(positionBlockTag);
  const written = orientation === undefined ? 1 : view.getUint16(orientation, little);
  return {
    orientation: written >= 1 && written <= 8 ? written : 1,
    position:
      positionAt !== undefined &&
      entriesAt(view, view.getUint32(positionAt, little), little).has(latitudeTag),
  };
}

/** Entries of one directory: tag to where its value, or the offset of it, stands. */
function entriesAt(view: DataView, at: number, little: boolean): Map<number, number> {
  const entries = new Map<number, number>();
  if (at + 2 > view.byteLength) return entries;
  const count = view.getUint16(at, little);
  for (let index = 0; index < count; index++) {
    const entry = at + 2 + 12 * index;
    if (entry + 12 > view.byteLength) break;
    entries.set(view.getUint16(entry, little), entry + 8);
  }
  return entries;
}
