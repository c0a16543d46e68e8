import type { Texts } from '../contract.ts';

/** The languages out of a record that also holds other keys, such as a mark with its place. */
export function textsOf(record: Readonly<Record<string, unknown>>, without: readonly string[]): Texts {
  const texts: Texts = {};
  for (const [key, value] of Object.entries(record)) {
    if (!without.includes(key) && typeof value === 'string') texts[key] = value;
  }
  return texts;
}
