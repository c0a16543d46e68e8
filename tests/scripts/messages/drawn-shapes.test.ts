import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { compileLineage, type CompileResult } from '../../../scripts/compile/index.ts';

const original = resolve(import.meta.dirname, '../../../content/reed-trunks');
const sheet = join('sheets', 'landmarks.csv');

type Cells = Map<string, string>;

/** Compiles the bundled lineage with the rows of some specimens digitised otherwise. */
async function compileDigitised(
  specimens: readonly string[],
  change: (cells: Cells) => void,
): Promise<CompileResult> {
  const folder = join(await mkdtemp(join(tmpdir(), 'lineage-')), 'reed-trunks');
  try {
    await cp(original, folder, { recursive: true });
    const [header = '', ...rows] = (await readFile(join(folder, sheet), 'utf8')).trimEnd().split('\n');
    const columns = header.split(',');
    const changed = rows.map((row) => {
      const cells = new Map(row.split(',').map((cell, index) => [columns[index]!, cell]));
      if (specimens.includes(cells.get('specimen')!)) change(cells);
      return [...cells.values()].join(',');
    });
    await writeFile(join(folder, sheet), [header, ...changed, ''].join('\n'));
    return await compileLineage(folder);
  } finally {
    await rm(resolve(folder, '..'), { recursive: true, force: true });
  }
}

const drawingFindings = ({ findings }: CompileResult) =>
  findings
    .filter(({ code }) => ['drawing-few', 'drawing-line', 'drawing-mirrored', 'drawing-folds'].includes(code))
    .map(({ code, severity, message, advice }) => ({ code, severity, message, advice }));

const places = (cells: Cells) => [...cells.keys()].filter((column) => /\.[xy]$/.test(column));

const keepOnly = (landmarks: readonly string[]) => (cells: Cells) => {
  for (const column of places(cells))
    if (!landmarks.includes(column.replace(/\.[xy]$/, ''))) cells.set(column, '');
};

function swap(cells: Cells, one: string, other: string): void {
  for (const axis of ['.x', '.y']) {
    const kept = cells.get(one + axis)!;
    cells.set(one + axis, cells.get(other + axis)!);
    cells.set(other + axis, kept);
  }
}

describe('landmarks that cannot carry a drawing', () => {
  test('fewer than three of them are told, with what a shape needs', async () => {
    const result = await compileDigitised(['obm-1183'], keepOnly(['bregma', 'vertex']));
    expect(drawingFindings(result)).toMatchInlineSnapshot(`
      [
        {
          "advice": "digitise more landmarks, or leave it: its values stand without a drawing",
          "code": "drawing-few",
          "message": ""limnorhina-fracta" cannot be drawn: obm-1183 has 2 of the template’s landmarks, and a shape needs three",
          "severity": "warning",
        },
      ]
    `);
  });

  test('three on one line are told', async () => {
    const result = await compileDigitised(['obm-1183'], (cells) => {
      keepOnly(['bregma', 'vertex', 'inion'])(cells);
      ['bregma', 'vertex', 'inion'].forEach((id, index) => {
        cells.set(`${id}.x`, String(1500 + 200 * index));
        cells.set(`${id}.y`, String(300 + 20 * index));
      });
    });
    expect(drawingFindings(result)).toMatchInlineSnapshot(`
      [
        {
          "advice": "digitise landmarks above or below the line, or leave it: its values stand without a drawing",
          "code": "drawing-line",
          "message": ""limnorhina-fracta" cannot be drawn: the 3 landmarks of obm-1183 lie all on one line",
          "severity": "warning",
        },
      ]
    `);
  });

  test('a side digitised the wrong way round is told at the specimen', async () => {
    const result = await compileDigitised(['obm-1262'], (cells) => {
      for (const column of places(cells))
        if (column.endsWith('.x') && cells.get(column) !== '')
          cells.set(column, String(2600 - Number(cells.get(column))));
    });
    expect(drawingFindings(result)).toMatchInlineSnapshot(`
      [
        {
          "advice": "look for two landmarks that changed places; until then pages show straight lines between its landmarks",
          "code": "drawing-folds",
          "message": "the drawing of "brevirhina-tarda" would fold between "naris-floor" and "naris-anterior", however short its steps",
          "severity": "warning",
        },
        {
          "advice": "digitise the side that the view names, or turn the picture over first and write mirrored: true",
          "code": "drawing-mirrored",
          "message": "the landmarks of obm-1262 fit its template only when they are turned over",
          "severity": "warning",
        },
      ]
    `);
  });

  test('a fold that short steps do not cure is refused, the pair named, and straight lines are left to draw', async () => {
    const result = await compileDigitised(['obm-1262', 'obm-1263'], (cells) =>
      swap(cells, 'bregma', 'gonion'),
    );
    expect(drawingFindings(result)).toMatchInlineSnapshot(`
      [
        {
          "advice": "look for two landmarks that changed places; until then pages show straight lines between its landmarks",
          "code": "drawing-folds",
          "message": "the drawing of "brevirhina-tarda" would fold between "bregma" and "postorbital-process", however short its steps",
          "severity": "warning",
        },
      ]
    `);
    const drawing = result.compiled!.drawings.find(({ taxon }) => taxon === 'brevirhina-tarda')!;
    expect(drawing.template).toBe('mammal-skull-left');
  });

  test('the bundled skulls give no reason for any of these', async () => {
    expect(drawingFindings(await compileDigitised([], () => undefined))).toEqual([]);
  });
});
