import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type coverage from '../../components/methods/coverage.json';

type Table = typeof coverage;

const path = fileURLToPath(new URL('../../components/methods/coverage.json', import.meta.url));

/** Whether what is measured is also written into the table that the methods page prints. */
const writes = process.env['WRITE_COVERAGE'] === '1';

/** Puts one row of the coverage where the tree is known into the table: shares by number of animals, to three digits. */
export function keepKnown(
  dataSets: number,
  animals: readonly number[],
  error: number,
  held: readonly number[],
): void {
  change((table) => {
    const rows = table.treeKnown.rows.filter((row) => row.error !== error);
    rows.push({ error, held: held.map(threeDigits) });
    rows.sort((a, b) => a.error - b.error);
    return { ...table, dataSets, treeKnown: { animals: [...animals], rows } };
  });
}

/** Puts the coverage of another case at one number of animals, by its place among them, into the table. */
export function keepOther(name: Table['otherwise'][number]['case'], place: number, held: number): void {
  change((table) => ({
    ...table,
    otherwise: table.otherwise.map((row) =>
      row.case === name ? { ...row, held: row.held.with(place, threeDigits(held)) } : row,
    ),
  }));
}

function change(of: (table: Table) => Table): void {
  if (!writes) return;
  const table = of(JSON.parse(readFileSync(path, 'utf8')) as Table);
  const how = 'WRITE_COVERAGE=1 npm run bench -- tests/bench/estimate-coverage.bench.ts';
  const dated = { ...table, how, date: new Date().toISOString().slice(0, 10) };
  writeFileSync(path, `${format(dated)}\n`);
}

/** The table with a row a line. */
function format(table: Table): string {
  const row = (value: object) =>
    JSON.stringify(value)
      .replace(/([:,{[])(?=\S)/g, '$1 ')
      .replace(/ ?\[ /g, ' [')
      .replace(/\}$/, ' }');
  const { treeKnown, otherwise, ...facts } = table;
  const lines = [
    ...Object.entries(facts).map(([name, value]) => `  ${JSON.stringify(name)}: ${JSON.stringify(value)},`),
    '  "treeKnown": {',
    `    "animals": [${treeKnown.animals.join(', ')}],`,
    '    "rows": [',
    treeKnown.rows.map((each) => `      ${row(each)}`).join(',\n'),
    '    ]',
    '  },',
    '  "otherwise": [',
    otherwise.map((each) => `    ${row(each)}`).join(',\n'),
    '  ]',
  ];
  return `{\n${lines.join('\n')}\n}`;
}

function threeDigits(share: number): number {
  return Number(share.toFixed(3));
}
