import { readdir, readFile } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { describe, expect, test } from 'vitest';

const sheet = await readFile(join(import.meta.dirname, '../../components/styles/tokens.css'), 'utf8');

/** Colours of one room, by token: the first of `light-dark()` is paper, the second night. */
function coloursOf(room: 'paper' | 'night'): Map<string, string> {
  const pairs = [...sheet.matchAll(/--([\w-]+):\s*light-dark\((#[0-9a-f]+),\s*(#[0-9a-f]+)\)/g)];
  return new Map(pairs.map(([, name, light, dark]) => [name!, (room === 'paper' ? light : dark)!]));
}

/** Relative luminance of a colour, as WCAG 2.2 defines it. */
function luminance(hex: string): number {
  const linear = [1, 3, 5].map((at) => {
    const share = parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * linear[0]! + 0.7152 * linear[1]! + 0.0722 * linear[2]!;
}

/** Contrast ratio of two colours, as WCAG 2.2 defines it: from 1 to 21. */
function contrast(a: string, b: string): number {
  const [dark, light] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light! + 0.05) / (dark! + 0.05);
}

test('the formula gives the ratios that are published for two greys on white', () => {
  // Published in the understanding document of WCAG 2.2 1.4.3: #767676 is the lightest grey that passes at 4.5 to 1.
  expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5);
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
});

const grounds = ['page', 'paper', 'bone'];
const units = ['unit-even', 'unit-odd'];

/** Text in use and the grounds on which it stands. WCAG 2.2 1.4.3 asks 4.5 to 1 for text of any size. */
const texts = [
  ...['ink', 'ink-second', 'accent-text'].flatMap((text) => grounds.map((ground) => [text, ground] as const)),
  ...units.map((ground) => ['ink', ground] as const),
];

/** Marks, lines and controls that must be seen to be understood. WCAG 2.2 1.4.11 asks 3 to 1. */
const graphics = [
  ...['ink', 'ink-second', 'accent', 'branch'].flatMap((mark) =>
    ['page', 'paper'].map((ground) => [mark, ground] as const),
  ),
  ...['ink', 'ink-second', 'accent'].map((mark) => [mark, 'bone'] as const),
  ...units.map((ground) => ['ink-second', ground] as const),
  ['control', 'page'] as const,
  ['control', 'paper'] as const,
];

describe.each(['paper', 'night'] as const)('in the room of %s', (room) => {
  const colours = coloursOf(room);
  const ratio = (a: string, b: string) => contrast(colours.get(a)!, colours.get(b)!);

  test.each(texts)('text in %s on %s has at least 4.5 to 1 (WCAG 2.2, 1.4.3)', (text, ground) => {
    expect(ratio(text, ground)).toBeGreaterThanOrEqual(4.5);
  });

  test.each(graphics)('a mark in %s on %s has at least 3 to 1 (WCAG 2.2, 1.4.11)', (mark, ground) => {
    expect(ratio(mark, ground)).toBeGreaterThanOrEqual(3);
  });

  test('the two rings of focus differ by 9 to 1, so that one stands out on any ground (WCAG technique C40)', () => {
    expect(ratio('focus-inner', 'focus-outer')).toBeGreaterThanOrEqual(9);
  });
});

/** Sheets of the pages by the rooms that they stand in. */
async function readRooms(rooms: readonly string[]): Promise<string[]> {
  const folder = join(import.meta.dirname, '../../components/styles');
  const names = await readdir(folder, { recursive: true });
  const wanted = names.filter(
    (name) => name.endsWith('.css') && rooms.includes(name.split(sep)[0]!.replace('.css', '')),
  );
  return Promise.all(wanted.map((name) => readFile(join(folder, name), 'utf8')));
}

test('every colour of the style sheets is a token, so that no pair escapes this test', async () => {
  const sheets = await readRooms(['base', 'reading', 'figure', 'story', 'evidence', 'around']);
  const strays = sheets.flatMap(
    (text) => text.match(/(?<![\w-])(?:fill|stroke|color|background):\s*#[0-9a-f]+/g) ?? [],
  );
  expect(strays).toEqual([]);
});

test('text has one of the tested colours and no other', async () => {
  const sheets = await readRooms(['base', 'reading', 'story', 'evidence', 'around']);
  const used = sheets.flatMap((text) =>
    [...text.matchAll(/(?<![\w-])color:\s*var\(--([\w-]+)\)/g)].map(([, name]) => name!),
  );
  expect(used.length).toBeGreaterThan(10);
  const tested = new Set<string>(texts.map(([text]) => text));
  expect(used.filter((colour) => !tested.has(colour))).toEqual([]);
});
