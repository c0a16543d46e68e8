import { directionOf, figures, isolated, ofFirstStrong } from './direction.ts';

/** A figure, the place of one, or a letter that stands for one. */
const term = String.raw`(?:[−+±]?\d[\d.,]*|\{\w+\}|(?<![A-Za-z])[A-Za-z](?![A-Za-z]))%?`;
/** What reads from left to right as one: a range, a sum, an error, brackets behind a value, a share, a signed figure. */
const runs = new RegExp(
  String.raw`${term}(?: ?[–±÷×=] ?${term}| \[${term}–${term}\])+|(?:\d[\d.,]*|\{\w+\})(?:%| Ma\b)|[−+]\d[\d.,]*`,
  'g',
);
/** A figure with a unit that is filled in, and that may be a sign or a word of the language. */
const withUnit = /\{\w+\} \{unit\}/g;

/**
 * A message with its places filled. Between words that run from right to left, what was filled in and what reads from left to right
 * in every language are held together by isolating marks, else their parts would change places.
 */
export function fill(message: string, language: string, place: (name: string) => string): string {
  if (directionOf(language) === 'ltr') return message.replace(places, (_, name: string) => place(name));
  return message
    .replace(runs, (run) => figures(run, language))
    .replace(withUnit, (quantity) => ofFirstStrong(quantity))
    .replace(places, (_, name: string) => isolated(place(name), language));
}

const places = /\{(\w+)\}/g;
