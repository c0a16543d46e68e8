import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { benchMessages } from '../../../components/measuring/bench-messages.ts';
import { benchWords } from '../../../components/measuring/bench-words.ts';
import { interfaceLanguages, voiceOf } from '../../../components/messages/say.ts';

const components = join(import.meta.dirname, '../../../components');

test('every phrase that the bench asks for by its name exists', async () => {
  const folders = ['measuring', 'islands'].map((name) => join(components, name));
  const names = await Promise.all(
    folders.map(async (folder) => (await readdir(folder)).map((file) => join(folder, file))),
  );
  const files = names.flat().filter((file) => /measuring.*\.(astro|ts)$/.test(file));
  const texts = await Promise.all(files.map((file) => readFile(file, 'utf8')));
  const asked = texts.flatMap((text) =>
    [...text.matchAll(/\b(?:phrase|#ask)\(\s*'([^']+)'/g)].map((match) => match[1]!),
  );
  expect(asked.length).toBeGreaterThan(60);
  const known = benchMessages(voiceOf('en'), interfaceLanguages);
  expect(asked.filter((key) => known[key] === undefined)).toEqual([]);
});

test('a language that the interface lacks gets English, key by key', () => {
  expect(benchMessages(voiceOf('fr'), interfaceLanguages)).toEqual(
    benchMessages(voiceOf('en'), interfaceLanguages),
  );
});

test('numbers and counts follow the language', () => {
  const words = benchWords(benchMessages(voiceOf('es'), interfaceLanguages), 'es');
  expect(words.number(1234.5, 2)).toBe('1234,50');
  expect(words.error(0.04321)).toBe('0,043');
  expect(words.count('aside', 1)).toContain('1 ejemplar está');
  expect(words.count('aside', 2)).toContain('2 ejemplares están');
});
