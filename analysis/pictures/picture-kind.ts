import { lettersAt } from './bytes.ts';

/** Kinds of picture that are told apart by their first bytes. */
export type PictureKind = 'jpeg' | 'png' | 'webp' | 'gif' | 'bmp' | 'avif' | 'svg';

/** What a file is by its bytes, whatever its name says; undefined for what no browser shows as a still picture. */
export function pictureKind(bytes: Uint8Array): PictureKind | undefined {
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'jpeg';
  if (lettersAt(bytes, 0, 8) === '\x89PNG\r\n\x1a\n') return 'png';
  if (lettersAt(bytes, 0, 4) === 'RIFF' && lettersAt(bytes, 8, 4) === 'WEBP') return 'webp';
  if (/^GIF8[79]a/.test(lettersAt(bytes, 0, 6))) return 'gif';
  if (lettersAt(bytes, 4, 4) === 'ftyp' && /^avi[fs]/.test(lettersAt(bytes, 8, 4))) return 'avif';
  if (lettersAt(bytes, 0, 2) === 'BM' && lettersAt(bytes, 6, 4) === '\0\0\0\0') return 'bmp';
  const head = new TextDecoder().decode(bytes.subarray(0, 4096));
  return /^\uFEFF?\s*(<\?xml[^>]*\?>|<!--[\s\S]*?-->|<!DOCTYPE\s+svg[^>]*>|\s)*<svg[\s>]/i.test(head)
    ? 'svg'
    : undefined;
}
