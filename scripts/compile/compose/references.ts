import type { Reference } from '../read/references.ts';

type Names = NonNullable<Reference['fields']['author']>;

/** A reference as the pages print it: a short form for running text, and one line for the list of sources. */
export interface PrintedReference {
  key: string;
  short: string;
  full: string;
  url?: string;
}

/** References in the form author, year; two of the same authors and year are told apart by a letter after the year. */
export function printReferences(references: readonly Reference[]): PrintedReference[] {
  const sorted = [...references].sort((one, other) => compare(sortKey(one), sortKey(other)));
  const letters = yearLetters(sorted);
  return sorted.map((reference) => {
    const year = `${yearOf(reference) ?? 'undated'}${letters.get(reference.key) ?? ''}`;
    const url = addressOf(reference);
    const printed = {
      key: reference.key,
      short: `${shortNames(reference)} ${year}`,
      full: fullLine(reference, year),
    };
    return url === undefined ? printed : { ...printed, url };
  });
}

/** Year of a reference, from `year` or from `date`; undefined when neither gives one. */
export function yearOf(reference: Reference): string | undefined {
  const { year, date } = reference.fields;
  return /\d{4}/.exec(year ?? date ?? '')?.[0] ?? (year?.trim() || undefined);
}

function peopleOf(reference: Reference): Names {
  return reference.fields.author ?? reference.fields.editor ?? [];
}

function sortKey(reference: Reference): string {
  const names = peopleOf(reference).map((name) => name.lastName ?? name.name ?? '');
  return [...names, yearOf(reference) ?? '', reference.fields['title'] ?? '', reference.key]
    .join(' ')
    .toLowerCase();
}

function compare(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}

function yearLetters(references: readonly Reference[]): Map<string, string> {
  const groups = Map.groupBy(
    references,
    (reference) => `${shortNames(reference)} ${yearOf(reference) ?? 'undated'}`,
  );
  const letters = new Map<string, string>();
  for (const group of groups.values()) {
    if (group.length > 1)
      group.forEach((reference, index) => letters.set(reference.key, String.fromCharCode(97 + index)));
  }
  return letters;
}

function shortNames(reference: Reference): string {
  const names = peopleOf(reference).map(familyName);
  if (names.length === 0) return organisation(reference) ?? 'Anonymous';
  if (names.length === 1) return names[0]!;
  return names.length === 2 ? `${names[0]} & ${names[1]}` : `${names[0]} et al.`;
}

function organisation(reference: Reference): string | undefined {
  const { organization, institution, publisher } = reference.fields;
  return (organization ?? institution ?? publisher)?.[0];
}

function familyName({ prefix, lastName, name }: Names[number]): string {
  return [prefix, lastName ?? name].filter(Boolean).join(' ');
}

function fullName(person: Names[number]): string {
  const initials = (person.firstName ?? '')
    .split(/[\s.]+/)
    .filter(Boolean)
    .map((word) => `${initialsOf(word)}`);
  return (
    [familyName(person), initials.join(' ')].filter(Boolean).join(', ') +
    (person.suffix ? ` ${person.suffix}` : '')
  );
}

/** A double name keeps its hyphen: Anne-Marie is A.-M. */
function initialsOf(word: string): string {
  return word
    .split('-')
    .filter(Boolean)
    .map((part) => `${[...part][0]!.toUpperCase()}.`)
    .join('-');
}

function fullLine(reference: Reference, year: string): string {
  const { fields } = reference;
  const names = peopleOf(reference).map(fullName);
  const who =
    names.length > 0
      ? names.join('; ') + (fields.author ? '' : names.length > 1 ? ' (eds)' : ' (ed.)')
      : (organisation(reference) ?? 'Anonymous');
  const parts = [`${who}, ${year}`, stripped(fields['title']), whereOf(reference), stripped(fields['note'])];
  return `${parts
    .filter(Boolean)
    .map((part) => part!.replace(/[.\s]+$/, ''))
    .join('. ')}.`;
}

function whereOf(reference: Reference): string | undefined {
  const { fields } = reference;
  const pages = stripped(fields['pages'])?.replaceAll(/-+/g, '–');
  const journal = stripped(fields['journal'] ?? fields['journaltitle']);
  if (journal !== undefined) {
    const issue =
      fields['volume'] === undefined
        ? ''
        : ` ${fields['volume']}${fields['number'] === undefined ? '' : ` (${fields['number']})`}`;
    return `${journal}${issue}${pages === undefined ? '' : `: ${pages}`}`;
  }
  const book = stripped(fields['booktitle']);
  const house = [
    fields.publisher?.join(', '),
    fields.institution?.join(', '),
    stripped(fields['school']),
    fields.location?.join(', ') ?? stripped(fields['address']),
  ]
    .filter(Boolean)
    .join(', ');
  const inBook = book === undefined ? '' : `In: ${book}${pages === undefined ? '' : `, ${pages}`}`;
  return [inBook, house].filter(Boolean).join('. ') || undefined;
}

/** The parser leaves inline markup in titles; the printed line is plain text. */
function stripped(text: string | undefined): string | undefined {
  return (
    text
      ?.replaceAll(/<[^>]+>/g, '')
      .replaceAll(/\s+/g, ' ')
      .trim() || undefined
  );
}

function addressOf(reference: Reference): string | undefined {
  const doi = reference.fields['doi']?.replace(/^(https?:\/\/(dx\.)?doi\.org\/|doi:\s*)/i, '');
  if (doi && /^10\.\d{4,9}\/\S+$/.test(doi)) return `https://doi.org/${doi}`;
  const { url } = reference.fields;
  return url && /^https?:\/\//.test(url) ? url : undefined;
}
