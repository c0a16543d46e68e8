import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import en from '../../components/messages/en.json' with { type: 'json' };
import { interfaceLanguages, voiceOf } from '../../components/messages/say.ts';

const places = (message: string) => [...message.matchAll(/\{(\w+)\}/g)].map((match) => match[1]!).sort();

describe.each(Object.keys(interfaceLanguages))('the messages in %s', (language) => {
  const messages = interfaceLanguages[language]!;

  test('are complete: the same keys as English', () => {
    expect(Object.keys(messages).sort()).toEqual(Object.keys(en).sort());
  });

  test('have the same places as English', () => {
    for (const [key, message] of Object.entries(en))
      expect(places(messages[key]!), key).toEqual(places(message));
  });

  test('speak of relatives, never of links or of one animal becoming another', () => {
    expect(Object.values(messages).join('\n')).not.toMatch(
      /missing link|evolved into|living fossil|eslabón perdido|fósil viviente/i,
    );
  });
});

test('every message that the pages ask for exists', async () => {
  const root = join(import.meta.dirname, '../../components');
  const entries = await readdir(root, { recursive: true, withFileTypes: true });
  const files = entries
    .filter((entry) => /\.(astro|ts)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name));
  const texts = await Promise.all(files.map((file) => readFile(file, 'utf8')));
  const asked = texts.flatMap((text) => [...text.matchAll(/\bsay\(\s*'([^']+)'/g)].map((match) => match[1]!));
  expect(asked.length).toBeGreaterThan(30);
  const known = new Set(Object.keys(en));
  for (const key of asked) expect(known.has(key) || known.has(`${key}other`), key).toBe(true);
});

test('a plural form is chosen by the rules of the language', () => {
  const voice = voiceOf('en');
  expect(voice.say('evidence.meanOf_', { count: 1, df: 40 })).toMatch(/^One specimen/);
  expect(voice.say('evidence.meanOf_', { count: 3, df: 40 })).toMatch(/^Mean of 3 specimens/);
});

test('a message without the value for its place is an error that names both', () => {
  expect(() => voiceOf('en').say('slice', { age: 3 })).toThrow('message "slice" needs a value for {count}');
});

test('numbers follow the language', () => {
  expect(voiceOf('es').number(14.25, 1)).toBe('14,3');
  expect(voiceOf('en').number(14.25, 1)).toBe('14.3');
});
