import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

/** What a page costs to open, in bytes as a server sends them by gzip at its usual level. */
export interface OpeningWeight {
  html: number;
  css: number;
  script: number;
}

/** Weighs a page of a built site with the sheets and scripts that it names and the scripts that those import at once. */
export async function openingWeight(folder: string, page: string, base = '/'): Promise<OpeningWeight> {
  const html = await readFile(join(folder, page), 'utf8');
  const named = new Set<string>();
  const take = async (file: string): Promise<void> => {
    if (named.has(file)) return;
    named.add(file);
    if (!file.endsWith('.js')) return;
    const code = await readFile(join(folder, file), 'utf8');
    for (const [, other] of code.matchAll(/(?:from|import)\s*"\.\/([^"]+\.js)"/g))
      await take(join('_astro', other!));
  };
  for (const [, address] of html.matchAll(/(?:href|src)="(\/[^"]+\.(?:css|js))"/g))
    await take(address!.slice(base.length));
  const sum = async (end: string) => {
    const sizes = [...named].filter((file) => file.endsWith(end)).map((file) => sent(join(folder, file)));
    return (await Promise.all(sizes)).reduce((total, size) => total + size, 0);
  };
  return { html: gzipSync(html).length, css: await sum('.css'), script: await sum('.js') };
}

/** Bytes of a file as it is sent. */
export async function sent(path: string): Promise<number> {
  return gzipSync(await readFile(path)).length;
}
