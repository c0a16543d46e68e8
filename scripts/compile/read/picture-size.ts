/** Width and height of a picture in px. */
export interface PictureSize {
  width: number;
  height: number;
}

/** Size out of the head of a WebP, GIF, AVIF, BMP or SVG file; undefined for anything else. */
export function sizeOf(head: Buffer): PictureSize | undefined {
  if (head.length >= 10 && head.toString('latin1', 0, 3) === 'GIF')
    return { width: head.readUInt16LE(6), height: head.readUInt16LE(8) };
  if (head.toString('latin1', 0, 4) === 'RIFF' && head.toString('latin1', 8, 12) === 'WEBP')
    return webpSize(head);
  if (head.toString('latin1', 4, 8) === 'ftyp') return avifSize(head);
  if (head.length >= 26 && head.toString('latin1', 0, 2) === 'BM')
    return { width: head.readInt32LE(18), height: Math.abs(head.readInt32LE(22)) };
  return svgSize(head.toString('utf8', 0, 4096));
}

/** AVIF keeps its size in the property "ispe" (ISO/IEC 23008-12, 6.5.3): after a version, width and height. */
function avifSize(head: Buffer): PictureSize | undefined {
  const at = head.indexOf('ispe', 0, 'latin1');
  if (at < 0 || at + 16 > head.length) return undefined;
  return { width: head.readUInt32BE(at + 8), height: head.readUInt32BE(at + 12) };
}

function webpSize(head: Buffer): PictureSize | undefined {
  if (head.length < 30) return undefined;
  const form = head.toString('latin1', 12, 16);
  if (form === 'VP8X') return { width: 1 + head.readUIntLE(24, 3), height: 1 + head.readUIntLE(27, 3) };
  if (form === 'VP8 ')
    return { width: head.readUInt16LE(26) & 0x3fff, height: head.readUInt16LE(28) & 0x3fff };
  const bits = head.readUInt32LE(21);
  return form === 'VP8L' ? { width: 1 + (bits & 0x3fff), height: 1 + ((bits >> 14) & 0x3fff) } : undefined;
}

function svgSize(text: string): PictureSize | undefined {
  const tag = /<svg\b[^>]*>/.exec(text)?.[0];
  if (!tag) return undefined;
  const box = /viewBox\s*=\s*["']\s*[-\d.]+[\s,]+[-\d.]+[\s,]+([\d.]+)[\s,]+([\d.]+)/.exec(tag);
  if (box) return { width: Number(box[1]), height: Number(box[2]) };
  const width = /\bwidth\s*=\s*["']([\d.]+)/.exec(tag)?.[1];
  const height = /\bheight\s*=\s*["']([\d.]+)/.exec(tag)?.[1];
  return width !== undefined && height !== undefined
    ? { width: Number(width), height: Number(height) }
    : undefined;
}
