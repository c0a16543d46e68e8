import { describe, expect, test } from 'vitest';
import { figures, isolated } from '../../components/messages/direction.ts';
import { fill } from '../../components/messages/fill.ts';
import { numbersIn } from '../../components/messages/number.ts';
import { withoutMarks } from '../../components/messages/without-marks.ts';

/** The isolating marks of Unicode Standard Annex 9, by its names for them. */
const shown = (text: string) =>
  text.replaceAll('\u2066', '<LRI>').replaceAll('\u2068', '<FSI>').replaceAll('\u2069', '<PDI>');
const inArabic = (message: string, places: Record<string, string> = {}) =>
  shown(fill(message, 'ar', (name) => places[name]!));

describe('a message in a language that runs from left to right', () => {
  test('holds what its places hold, and no marks', () => {
    const places: Record<string, string> = { value: '14', error: '2' };
    expect(fill('{value} ± {error}', 'es', (name) => places[name]!)).toBe('14 ± 2');
  });
});

describe('a message that runs from right to left', () => {
  test.each([
    ['{value} ± {error}', '<LRI>14 ± 2<PDI>'],
    ['{value} [{low}–{high}]', '<LRI>14 [3–20]<PDI>'],
    ['مدى 95%', 'مدى <LRI>95%<PDI>'],
    ['ثقة {value}%', 'ثقة <LRI>14%<PDI>'],
    ['قريب من −1، لأن', 'قريب من <LRI>−1<PDI>، لأن'],
    ['(p = {low})', '(<LRI>p = 3<PDI>)'],
    ['a ÷ b نسبةً', '<LRI>a ÷ b<PDI> نسبةً'],
    ['حتى {low} Ma، بثقة', 'حتى <LRI>3 Ma<PDI>، بثقة'],
    ['{low} {unit}', '<FSI>3 مم<PDI>'],
    ['{low} × {high} بكسل', '<LRI>3 × 20<PDI> بكسل'],
  ])('holds %s together', (message, filled) => {
    expect(inArabic(message, { value: '14', error: '2', low: '3', high: '20', unit: 'مم' })).toBe(filled);
  });

  test('holds a name, a quantity and an address together, and leaves plain numbers and its own words alone', () => {
    expect(inArabic('{it}', { it: 'INV 12' })).toBe('<FSI>INV 12<PDI>');
    expect(inArabic('{it}', { it: '43.0–40.4' })).toBe('<FSI>43.0–40.4<PDI>');
    expect(inArabic('{it}', { it: 'حيوان' })).toBe('حيوان');
    expect(inArabic('{it}', { it: '12.5' })).toBe('12.5');
  });

  test('does not hold together what is held already', () => {
    expect(isolated(figures('3–4', 'ar'), 'ar')).toBe(figures('3–4', 'ar'));
    expect(withoutMarks(isolated('INV 12', 'ar'))).toBe('INV 12');
  });
});

test('a number below zero has a minus, and one that rounds to zero has none', () => {
  for (const language of ['en', 'es', 'ar']) {
    expect(withoutMarks(numbersIn(language)(-6, 0))).toBe('−6');
    expect(numbersIn(language)(-0.04, 1)).not.toContain('−');
  }
});
