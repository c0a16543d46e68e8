import { figures } from './direction.ts';

/** Prints numbers in a language's own way, with so many decimals and a minus sign that is one, not a hyphen. */
export function numbersIn(language: string): (value: number, decimals: number) => string {
  // Kept, because to make a format costs as much as to draw a skull.
  const formats = new Map<number, Intl.NumberFormat>();
  return (value, decimals) => {
    const format = formats.get(decimals) ?? formatOf(language, decimals);
    formats.set(decimals, format);
    const printed = format.format(value);
    const unsigned = printed.replace(/^\u200e?-/, '');
    return unsigned === printed ? printed : figures(`−${unsigned}`, language);
  };
}

function formatOf(language: string, decimals: number): Intl.NumberFormat {
  return new Intl.NumberFormat(language, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
    useGrouping: false,
    signDisplay: 'negative',
  });
}
