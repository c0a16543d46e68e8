import type { Report } from '../findings/report.ts';
import type { Cell } from './csv-source.ts';

const plainNumber = /^[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?$/;
const notMeasuredWords = /^(n\/?a|n\.a\.|nan|null|none|-+|—|–|\?|\.|x|nd|n\.d\.|missing)$/i;
const month = 'jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|ene|abr|ago|dic';
const dateForms = new RegExp(
  String.raw`^(\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}|\d{1,2}[- ](${month})[a-z]*([- ]\d{2,4})?|(${month})[a-z]*[- ]\d{2,4})$`,
  'i',
);

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
  if (/^=|^#(REF|N\/A|VALUE|DIV\/0|NAME|NUM|NULL)/i.test(text)) {
    report.add(
      'csv-formula',
      span,
      `a spreadsheet formula or its error was left: "${text}"`,
      'paste the value instead of the formula',
    );
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
  } else if (dateForms.test(text)) {
    report.add(
      'csv-date',
      span,
      `"${text}" looks like a number that a spreadsheet made into a date`,
      'set the column to text or number and type the value again',
    );
  } else {
    number(
      `"${text}" is not a number`,
      'write the number alone, with its unit in the header; leave the cell empty for ‘not measured’',
    );
  }
}

function bare(text: string): string {
  const decimalComma = /,\d+$/.test(text) && !/,\d{3}(,\d{3})*$/.test(text);
  const digits = text.replaceAll(/[ '\u00a0\u202f’]/g, '');
  return decimalComma ? digits.replaceAll('.', '').replace(',', '.') : digits.replaceAll(',', '');
}
