import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const folder = join(import.meta.dirname, '../../components/styles');
const names = (await readdir(folder, { recursive: true })).filter((name) => name.endsWith('.css'));
const sheets = await Promise.all(
  names.map(async (name) => ({ name, css: await readFile(join(folder, name), 'utf8') })),
);

test.each(sheets)('$name, read alone, is short enough to hold in mind', ({ css }) => {
  expect(css.split('\n').length).toBeLessThanOrEqual(320);
});

/** Sheets that pages load by themselves, and what those hold. */
const isEntry = (name: string) => name === 'index.css' || name.startsWith('rooms/');
const held = (name: string): string[] =>
  [...sheets.find((sheet) => sheet.name === name)!.css.matchAll(/@import '([^']+)'/g)]
    .map((found) => join(name, '..', found[1]!))
    .flatMap((each) => [each, ...held(each)]);

test('every sheet is in a room, and no room holds again what every page has', () => {
  const rooms = names.filter((name) => name.startsWith('rooms/')).flatMap(held);
  const everywhere = held('index.css');
  expect(new Set([...everywhere, ...rooms])).toEqual(new Set(names.filter((name) => !isEntry(name))));
  expect(rooms.filter((name) => name !== 'layers.css' && everywhere.includes(name))).toEqual([]);
  expect(everywhere.filter((name, at) => everywhere.indexOf(name) !== at)).toEqual([]);
});

test('no room writes into a layer of what every page has: which of the two comes first is not ours to say', () => {
  const layersOf = (name: string) =>
    [...sheets.find((sheet) => sheet.name === name)!.css.matchAll(/layer\(([^)]+)\)/g)].map(
      (found) => found[1]!,
    );
  const everywhere = layersOf('index.css');
  const rooms = names.filter((name) => name.startsWith('rooms/')).flatMap(layersOf);
  expect(rooms.filter((layer) => everywhere.includes(layer))).toEqual([]);
});

test.each(names.filter(isEntry))('%s states the order of the layers first', (name) => {
  expect(held(name)[0]).toBe('layers.css');
});
