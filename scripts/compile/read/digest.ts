import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { LineageFolder } from './files.ts';

const binary = /\.(png|jpe?g|webp|avif|gif|tiff?|pdf|ttf|woff2?)$/i;
const neverDigested = new Set(['private.yaml']);

/**
 * SHA-256 of a lineage folder: each path and its content in the order of paths, texts with LF line ends and in
 * Unicode NFC, so that another editor or system gives the same. private.yaml takes no part.
 */
export async function contentDigest(folder: LineageFolder): Promise<string> {
  const digest = createHash('sha256');
  for (const file of folder.files) {
    if (neverDigested.has(file)) continue;
    const bytes = await readFile(join(folder.path, file));
    const content = binary.test(file) ? bytes : normalText(bytes);
    digest.update(`${file}\0${content.length}\0`).update(content);
  }
  return digest.digest('hex');
}

function normalText(bytes: Buffer): Buffer {
  const text = bytes
    .toString('utf8')
    .replace(/^\uFEFF/, '')
    .replace(/\r\n?/g, '\n');
  return Buffer.from(text.normalize('NFC'), 'utf8');
}
