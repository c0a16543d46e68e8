/** A text as it is seen and copied: without isolating marks, which take no room and do not belong into an address. */
export function withoutMarks(text: string): string {
  return text.replace(/[\u2066-\u2069]/g, '');
}
