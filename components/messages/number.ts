import { figures } from './direction.ts';

/** Prints numbers in a language's own way, with so many decimals and a minus sign that is one, not a hyphen. */
export function numbersIn(language: string): (value: number, decimals: number) => string {
  return (value, decimals) => {
    const printed = new Intl.NumberFormat(language, {
      minimumFractionDigits: decimals,
      maximumFractionDigits: decimals,
      useGrouping: false,
      signDisplay: 'negative',
    }).format(value);
    const unsigned = printed.replace(/^\u200e?-/, '');
    return unsigned === printed ? printed : figures(`−${unsigned}`, language);
  };
}
