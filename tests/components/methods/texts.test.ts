import { describe, expect, test } from 'vitest';
import { interfaceLanguages } from '../../../components/messages/say.ts';
import { methodsLanguage, methodsTexts } from '../../../components/methods/texts.ts';

/** Every text of a nested value with its path, as `sections.0.heading`. */
function textsOf(value: unknown, path = ''): [string, string][] {
  if (typeof value === 'string') return [[path, value]];
  return Object.entries(value as object).flatMap(([key, each]) =>
    textsOf(each, path === '' ? key : `${path}.${key}`),
  );
}
const places = (text: string) => [...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name!).sort();
/** Numbers in Latin digits, and the names of criteria. */
const figures = (text: string) => [...text.matchAll(/\d+%|±|AICc/g)].map(([each]) => each).sort();
const english = textsOf(methodsTexts.en);

test('the methods are written in every language of the interface', () => {
  expect(Object.keys(methodsTexts).sort()).toEqual(Object.keys(interfaceLanguages).sort());
});

describe.each(Object.entries(methodsTexts))('the methods in %s', (language, text) => {
  const own = new Map(textsOf(text));

  test('have every heading, paragraph, case and source that English has, none empty', () => {
    expect([...own.keys()].sort()).toEqual(english.map(([path]) => path).sort());
    for (const [path, words] of own) expect(words.trim(), path).not.toBe('');
  });

  test('keep the places, percentages and criteria of English', () => {
    for (const [path, words] of english) {
      expect(places(own.get(path)!), path).toEqual(places(words));
      expect(figures(own.get(path)!), path).toEqual(figures(words));
    }
  });

  test('name each source by its years, volumes and pages as English does', () => {
    const numbers = (words: string) => words.match(/\d{2,}/g);
    for (const [path, words] of english.filter(([each]) => each.startsWith('sources.')))
      expect(numbers(own.get(path)!), path).toEqual(numbers(words));
  });

  test('are found by a reader of that language', () => {
    expect(methodsLanguage(language)).toBe(language);
  });
});

test('Arabic is written in Arabic letters throughout', () => {
  for (const [path, words] of textsOf(methodsTexts.ar)) expect(words, path).toMatch(/[\u0621-\u064a]/);
});

test('a reader of a language that the methods lack is led to English', () => {
  expect(methodsLanguage('fr')).toBe('en');
  expect(methodsLanguage('toString')).toBe('en');
});
