import type { Report } from '../findings/report.ts';
import type { Cell } from './csv-source.ts';

const plainNumber = /^[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?$/;
const notMeasuredWords = /^(n\/?a|n\.a\.|nan|null|none|-+|—|–|\?|\.|x|nd|n\.d\.|missing)$/i;
const months =
  'jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|ene|abr|ago|dic|fév|avr|mai|juin|août|déc|mär|mrz|okt|dez|fev|set|out|gen|mag|giu|lug|ott';
const namedMonth = new RegExp(
  String.raw`^(\d{1,2}[-/. ]{1,2}(${months})\p{L}*\.?([-/. ]\d{2,4})?|(${months})\p{L}*\.?[-/. ]\d{2,4})$`,
  'iu',
);
const numericDate = /^(\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}|\d{1,2}\/\d{1,2}|\d{1,3}:\d{2}(:\d{2})?)$/;
const formula = /^[=@]|^#(\D|$)|^[+-]\$?[A-Z]{1,3}\$?\d+/;
const about = /^(~|≈|±|c\.|ca\.?|circa|about|approx\.?)\s*\d/i;
const beyond = /^[<>≤≥]=?\s*\d/;

/** True for a cell in which a spreadsheet left its formula, the error of one, or ### for want of room. */
export function isFormula(text: string): boolean {
  return formula.test(text);
}

/** True for a date with the name of its month, which no catalogue number is by intention. */
export function hasNamedMonth(text: string): boolean {
  return namedMonth.test(text);
}

/**
 * The number in a cell, or undefined when it is empty or one of the words that mean ‘not measured’.
 * Anything else is reported at the cell and is undefined too.
 */
export function readNumber(
  cell: Cell,
  report: Report,
  notMeasured: readonly string[] = [],
): number | undefined {
  const { text } = cell;
  if (text === '' || notMeasured.includes(text)) return undefined;
  const value = Number(text);
  if (plainNumber.test(text) && Number.isFinite(value)) return value;
  explain(cell, report);
  return undefined;
}

function explain({ text, span }: Cell, report: Report): void {
  const number = (problem: string, advice: string) => report.add('csv-number', span, problem, advice);
  if (isFormula(text)) {
    reportFormula({ text, span }, report);
  } else if (notMeasuredWords.test(text)) {
    number(
      `"${text}" stands where a number should`,
      'if it means ‘not measured’, leave the cell empty, or list the word under notMeasured of this sheet in scheme.yaml',
    );
  } else if (
    /^[+-]?\d{1,3}(\.\d{3})+,\d+$|^[+-]?\d{1,3}(,\d{3})+(\.\d+)?$|^[+-]?\d{1,3}([ '\u00a0\u202f’]\d{3})+([.,]\d+)?$/.test(
      text,
    )
  ) {
    number(
      `"${text}" has separators inside the number`,
      `write digits and one decimal point, such as ${bare(text)}`,
    );
  } else if (/^[+-]?\d*,\d+$/.test(text)) {
    number(`"${text}" has a decimal comma`, `write ${text.replace(',', '.')}`);
  } else if (namedMonth.test(text) || numericDate.test(text)) {
    reportDate({ text, span }, report);
  } else if (about.test(text)) {
    number(
      `"${text}" is about a number`,
      'write the number alone, and its 95% plus or minus in a column of its own: "MEASUREMENT.approximate"',
    );
  } else if (beyond.test(text)) {
    number(
      `"${text}" is a limit, not a number`,
      'write what was measured, and the landmark that is lost in a column of its own: "MEASUREMENT.toBreak"',
    );
  } else if (/^[\p{Nd}\u2212\u2013.,]+$/u.test(text)) {
    number(
      `"${text}" is not written in plain digits`,
      'write the digits 0 to 9, a hyphen for minus and one point',
    );
  } else {
    number(
      `"${text}" is not a number`,
      'write the number alone, with its unit in the header; leave the cell empty for ‘not measured’',
    );
  }
}

/** Reports a formula at its cell. */
export function reportFormula({ text, span }: Cell, report: Report): void {
  report.add(
    'csv-formula',
    span,
    `a spreadsheet formula or its error was left: "${text}"`,
    'paste the value instead of the formula',
  );
}

/** Reports a date that stands where a number was typed. */
export function reportDate({ text, span }: Cell, report: Report): void {
  report.add(
    'csv-date',
    span,
    `"${text}" looks like a number that a spreadsheet made into a date or a time`,
    'set the column to text or number and type the value again',
  );
}

function bare(text: string): string {
  const decimalComma = /,\d+$/.test(text) && !/,\d{3}(,\d{3})*$/.test(text);
  const digits = text.replaceAll(/[ '\u00a0\u202f’]/g, '');
  return decimalComma ? digits.replaceAll('.', '').replace(',', '.') : digits.replaceAll(',', '');
}
