import { describe, expect, test } from 'vitest';
import { fineShares, placeStatement, wideShares } from '../../analysis/statements/index.ts';
import { sayPlace, type AxisWords } from '../../components/messages/phrase.ts';
import { voiceOf, type MessageKey, type Voice } from '../../components/messages/say.ts';
import type { CompiledValue } from '../../scripts/compile/contract.ts';

const axes = {
  en: { start: 'the snout tip', end: 'the eye socket' },
  es: { start: 'la punta del hocico', end: 'el borde de la órbita' },
};

function valueOf(fields: Partial<CompiledValue>): CompiledValue {
  return {
    taxon: 'ixa',
    status: 'measured',
    estimate: null,
    interval: [null, null],
    level: 0.95,
    method: 'mean',
    df: null,
    standardError: null,
    n: 1,
    specimens: [],
    leftOut: [],
    facets: [],
    placedMa: null,
    ...fields,
  };
}
const between = (low: number, high: number, estimate = (low + high) / 2) =>
  valueOf({ estimate, interval: [low, high] });
const limited = (limits: { atLeast?: number; atMost?: number }) =>
  valueOf({ status: 'bounded', limits: { ...limits, specimen: 'none' } });
const phraseOf = (value: CompiledValue, axis: AxisWords, voice: Voice) => {
  const said = placeStatement(value);
  return said && sayPlace(said, axis, voice);
};
const english = (value: CompiledValue) => phraseOf(value, axes.en, voiceOf('en'));
const spanish = (value: CompiledValue) => phraseOf(value, axes.es, voiceOf('es'));

const way = 'of the way from the snout tip to the eye socket';
const camino = 'del camino desde la punta del hocico hasta el borde de la órbita';

test.each<[string, CompiledValue, string | undefined]>([
  ['a named share in a narrow interval', between(31, 36), `about a third ${way}`],
  ['the named share nearest to the middle', between(18.8, 25.04, 21.9), `about a fifth ${way}`],
  ['a narrow interval between two names', between(11.8, 15.5), `between a tenth and a fifth ${way}`],
  ['a wide interval', between(29.6, 55.8), `somewhere from a quarter to over half ${way}`],
  ['a wide interval that ends on a name', between(26, 50), `somewhere from a quarter to half ${way}`],
  [
    'a wide interval from before the start',
    between(-6, 95),
    'somewhere between the snout tip and over nine tenths of the way to the eye socket',
  ],
  [
    'a wide interval to beyond the end',
    between(52, 125),
    'somewhere from half of the way between the snout tip and the eye socket to beyond the eye socket',
  ],
  [
    'a wide interval from near the start to beyond the end',
    between(4, 125),
    'somewhere between the snout tip and a place beyond the eye socket',
  ],
  ['an interval that covers the whole way', between(-6, 125), undefined],
  [
    'a narrow interval near the start',
    between(3, 8),
    'somewhere between the snout tip and a tenth of the way to the eye socket',
  ],
  [
    'a narrow interval near the end',
    between(92, 97),
    'somewhere from nine tenths of the way between the snout tip and the eye socket to the eye socket itself',
  ],
  ['a value at the end', between(98, 103), 'about level with the eye socket'],
  ['a value at the start', between(-2, 2), 'about level with the snout tip'],
  ['a value past the end', between(107, 109), 'beyond the eye socket'],
  ['a value before the start', between(-9, -7), 'before the snout tip'],
  ['a value without an interval', valueOf({ estimate: 14 }), `between a tenth and a fifth ${way}`],
  ['a floor, at the name below it', limited({ atLeast: 35 }), `at least a third ${way}`],
  ['a floor just short of a name', limited({ atLeast: 31.3 }), `at least three tenths ${way}`],
  ['a floor under every name', limited({ atLeast: 4 }), 'somewhere beyond the snout tip'],
  ['a floor past the end', limited({ atLeast: 101 }), 'beyond the eye socket'],
  ['a ceiling, at the name above it', limited({ atMost: 31.3 }), `at most a third ${way}`],
  ['a ceiling over every name', limited({ atMost: 96 }), 'somewhere before the eye socket'],
  ['a ceiling past the end', limited({ atMost: 120 }), undefined],
  [
    'a floor and a ceiling',
    limited({ atLeast: 31, atMost: 60 }),
    `somewhere from a quarter to over half ${way}`,
  ],
  ['an unknown value', valueOf({ status: 'unknown' }), undefined],
])('in English, %s', (_, value, phrase) => expect(english(value)).toBe(phrase));

test.each<[string, CompiledValue, string | undefined]>([
  ['a named share in a narrow interval', between(31, 36), `más o menos a un tercio ${camino}`],
  [
    'a narrow interval between two names',
    between(11.8, 15.5),
    `entre una décima parte y una quinta parte ${camino}`,
  ],
  [
    'a wide interval',
    between(29.6, 55.8),
    `en algún lugar desde una cuarta parte hasta más de la mitad ${camino}`,
  ],
  ['an article after its preposition', between(107, 109), 'más allá del borde de la órbita'],
  ['a value at the end', between(98, 103), 'más o menos a la altura del borde de la órbita'],
  ['a floor', limited({ atLeast: 35 }), `al menos a un tercio ${camino}`],
  ['an unknown value', valueOf({ status: 'unknown' }), undefined],
])('in Spanish, %s', (_, value, phrase) => expect(spanish(value)).toBe(phrase));

describe('a phrase is no more exact than its value', () => {
  const named = new Map(
    [...fineShares, ...wideShares].map(({ at, id }) => [
      voiceOf('en').say(`phrase.share.${id}` as MessageKey),
      at,
    ]),
  );
  const everyInterval = Array.from({ length: 90 }, (_, low) =>
    [1, 3, 8, 16, 17, 25, 40].map((width) => [low + 0.4, low + 0.4 + width] as const),
  ).flat();

  test('the one place that it names lies in the interval', () => {
    for (const [low, high] of everyInterval) {
      const name = /^about (?!level)(.+) of the way/.exec(english(between(low, high)) ?? '')?.[1];
      if (name === undefined) continue;
      expect(named.get(name)! * 100, `${low} to ${high}`).toBeGreaterThanOrEqual(low);
      expect(named.get(name)! * 100, `${low} to ${high}`).toBeLessThanOrEqual(high);
    }
  });

  test('the lower of the two places that it names never lies in the interval', () => {
    for (const [low, high] of everyInterval) {
      const name = /^(?:between|somewhere from) (?!the)(.+?) (?:and|to|of)/.exec(
        english(between(low, high)) ?? '',
      )?.[1];
      if (name !== undefined) expect(named.get(name)! * 100, `${low} to ${high}`).toBeLessThanOrEqual(low);
    }
  });

  test('the same place is never named twice', () => {
    for (const [low, high] of everyInterval)
      for (const name of named.keys())
        expect(
          (english(between(low, high)) ?? '').split(` ${name} `).length,
          `${low} to ${high}`,
        ).toBeLessThan(3);
  });
});
