import { fill } from '../messages/fill.ts';
import { numbersIn } from '../messages/number.ts';

/** The bench's voice in the browser. */
export interface BenchWords {
  /** The message with its places filled; its key in place of one that is missing. */
  phrase(key: string, places?: Readonly<Record<string, string | number>>): string;
  /** The form of a message for a count, by the rules of the language. */
  count(key: string, count: number): string;
  /** A number in the language's own way, with so many decimals. */
  number(value: number, decimals: number): string;
  /** A number with two digits that count, as errors are printed. */
  error(value: number): string;
}

/** A voice out of the messages that the page carries. */
export function benchWords(messages: Readonly<Record<string, string>>, language: string): BenchWords {
  const rules = new Intl.PluralRules(language);
  const phrase: BenchWords['phrase'] = (key, places = {}) =>
    fill(messages[key] ?? key, language, (name) => String(places[name] ?? ''));
  return {
    phrase,
    count: (key, count) => phrase(`${key}_${rules.select(count) === 'one' ? 'one' : 'other'}`, { count }),
    number: numbersIn(language),
    error: (value) =>
      new Intl.NumberFormat(language, { maximumSignificantDigits: 2, useGrouping: false }).format(value),
  };
}
