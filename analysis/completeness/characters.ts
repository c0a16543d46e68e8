/** Characters of a matrix, how many of them are scored for a taxon, and how many cannot be because the part is not its own. */
export interface CharacterCounts {
  readonly characters: number;
  readonly scored: number;
  readonly inapplicable: number;
}

/**
 * Character completeness in percent, of all characters and of those that apply (Mannion and Upchurch 2010, Paleobiology 36:
 * 283–302), and how many are not known. Null where there is nothing to score. Throws for more scored and inapplicable
 * ones than there are.
 */
export function characterCompleteness({ characters, scored, inapplicable }: CharacterCounts): {
  readonly ofAll: number | null;
  readonly ofApplicable: number | null;
  readonly unknown: number;
} {
  const unknown = characters - scored - inapplicable;
  if (!(scored >= 0 && inapplicable >= 0 && unknown >= 0))
    throw new Error(
      `${scored} scored and ${inapplicable} inapplicable characters of ${characters} cannot be`,
    );
  const share = (of: number) => (of > 0 ? (100 * scored) / of : null);
  return { ofAll: share(characters), ofApplicable: share(characters - inapplicable), unknown };
}
