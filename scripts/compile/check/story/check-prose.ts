import { findCoordinates } from '../place-words.ts';
import type { Report } from '../../findings/report.ts';
import type { Span } from '../../source/source-text.ts';
import { numberWordPattern } from './number-words.ts';
import { phrases, type Phrase } from './phrases.ts';

/** What prose in one language is held to. */
export interface ProseRules {
  phrases: readonly Phrase[];
  numberWords: RegExp | undefined;
  /** Labels of specimens, whose digits are names and not numbers. */
  catalogueNumbers: RegExp | undefined;
}

/** The rules for a language, given the labels of known specimens and the words for the traits in it. */
export function proseRules(
  language: string,
  specimenLabels: readonly string[],
  traitWords: readonly string[],
): ProseRules {
  const labels = specimenLabels
    .filter((label) => /\p{N}/u.test(label))
    .sort((one, other) => other.length - one.length);
  const escaped = labels.map((label) =>
    label.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&').replaceAll(' ', '[\\s\\u00a0]'),
  );
  return {
    phrases: phrases[language.split('-')[0]!] ?? [],
    numberWords: numberWordPattern(language, traitWords),
    catalogueNumbers:
      labels.length > 0
        ? new RegExp(`(?<![\\p{L}\\p{N}])(?:${escaped.join('|')})(?![\\p{L}\\p{N}])`, 'gu')
        : undefined,
  };
}

const digits = /[\p{Nd}\p{No}\p{Nl}]+(?:[.,:/\u2013-]?[\p{Nd}\p{No}\p{Nl}]+)*/gu;

/** Checks a piece of prose that stands at a span: no digits, no misleading phrases, no measured number in words. */
export function checkProse(text: string, span: Span, rules: ProseRules, report: Report): void {
  const blank = (found: string) => ' '.repeat(found.length);
  const named = rules.catalogueNumbers ? text.replaceAll(rules.catalogueNumbers, blank) : text;
  for (const match of withoutPlaces(named).matchAll(digits)) {
    report.add(
      'story-digits',
      part(span, match),
      `a number is typed into the story: "${match[0]}"`,
      'place it with <Value>, <Age> or <Count>, so that it follows the records; put it in <Plain> if it is no result',
    );
  }
  for (const { pattern, why } of rules.phrases) {
    for (const match of text.matchAll(pattern))
      report.add('story-phrase', part(span, match), `think again about "${match[0]}"`, why);
  }
  for (const match of rules.numberWords ? text.matchAll(rules.numberWords) : []) {
    report.add(
      'story-number-word',
      part(span, match),
      `a number in words: "${match[0]}"`,
      'if it is a result, place it with <Value>, <Age> or <Count>; round words such as "about half" stay true only by luck',
    );
  }
}

/** The text with coordinates blanked: an exact place is told as a place, not once more as numbers. */
function withoutPlaces(text: string): string {
  const place = findCoordinates(text);
  if (!place) return text;
  const end = place.start + place.length;
  return text.slice(0, place.start) + ' '.repeat(place.length) + withoutPlaces(text.slice(end));
}

function part(span: Span, match: RegExpExecArray): Span {
  const start = Math.min(span.start + match.index, span.end);
  return { source: span.source, start, end: start + match[0].length };
}
