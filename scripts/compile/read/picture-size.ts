import { open } from 'node:fs/promises';
import { join } from 'node:path';
import type { LineageFolder } from './files.ts';

/** Width and height of a picture in px. */
export interface PictureSize {
  width: number;
  height: number;
}

const kinds = /\.(png|jpe?g|webp|svg|gif)$/i;

/** Sizes of the pictures of a folder, from the heads of their files; a picture whose head is not understood is left out. */
export async function pictureSizes(folder: LineageFolder): Promise<Map<string, PictureSize>> {
  const sizes = new Map<string, PictureSize>();
  for (const file of folder.files) {
    if (!kinds.test(file)) continue;
    const size = sizeOf(await headOf(join(folder.path, file)));
    if (size && size.width > 0 && size.height > 0) sizes.set(file, size);
  }
  return sizes;
}

/** JPEG keeps its size behind colour profiles and camera notes, so the head is long. */
const headBytes = 262_144;

async function headOf(path: string): Promise<Buffer> {
  const handle = await open(path);
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(headBytes), 0, headBytes, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}

/** Size out of the first bytes of a PNG, GIF, JPEG, WebP or SVG file; undefined for anything else. */
export function sizeOf(head: Buffer): PictureSize | undefined {
  if (head.length >= 24 && head.toString('latin1', 1, 4) === 'PNG')
    return { width: head.readUInt32BE(16), height: head.readUInt32BE(20) };
  if (head.length >= 10 && head.toString('latin1', 0, 3) === 'GIF')
    return { width: head.readUInt16LE(6), height: head.readUInt16LE(8) };
  if (head[0] === 0xff && head[1] === 0xd8) return jpegSize(head);
  if (head.toString('latin1', 0, 4) === 'RIFF' && head.toString('latin1', 8, 12) === 'WEBP')
    return webpSize(head);
  return svgSize(head.toString('utf8', 0, 4096));
}

function jpegSize(head: Buffer): PictureSize | undefined {
  let at = 2;
  while (at + 9 < head.length && head[at] === 0xff) {
    const marker = head[at + 1]!;
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (isFrame) return { height: head.readUInt16BE(at + 5), width: head.readUInt16BE(at + 7) };
    at += 2 + head.readUInt16BE(at + 2);
  }
  return undefined;
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
