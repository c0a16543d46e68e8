import type { ExifFacts } from './exif-block.ts';

/** What a picture file holds besides the picture, and the file without it. */
export interface CameraNotes extends ExifFacts {
  readonly width: number;
  readonly height: number;
  /** Notes of camera or editor that were taken out: Exif, XMP, captions, pictures behind the picture. */
  readonly removed: boolean;
  /** The same picture to the bit, without notes; orientation is not in it any more. */
  readonly clean: Uint8Array<ArrayBuffer>;
}

/** Whether a packet of XMP or text carries a position. */
export function hasPositionText(bytes: Uint8Array): boolean {
  return /GPS(Latitude|Position|Coordinates)/i.test(new TextDecoder('latin1').decode(bytes));
}
