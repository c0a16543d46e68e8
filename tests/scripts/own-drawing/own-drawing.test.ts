import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { plainMarkup } from '../../../scripts/compile/own-drawing/plain-markup.ts';
import { allElements, readSvg } from '../../../scripts/compile/own-drawing/svg-tags.ts';
import type { CompiledDrawing } from '../../../scripts/compile/contract.ts';
import { compileLineage } from '../../../scripts/compile/index.ts';

function elementOf(text: string) {
  const root = readSvg(text);
  if ('problem' in root) throw new Error(root.problem);
  return root;
}
const plain = (text: string) => plainMarkup(elementOf(text), 'own-a-');

describe('the markup of a drawing', () => {
  test('keeps shapes and what places and colours them', () => {
    expect(plain('<g transform="scale(2)"><path d="M0 0L1 1" stroke="#a03" stroke-width="2"/></g>')).toBe(
      '<g transform="scale(2)"><path d="M0 0L1 1" stroke="#a03" stroke-width="2"></path></g>',
    );
  });

  test('takes declarations of a style as attributes, because pages allow no styles inside', () => {
    expect(plain('<path style="fill:none; stroke: #c40 ;-x-y:1" d="M0 0"/>')).toBe(
      '<path fill="none" stroke="#c40" d="M0 0"></path>',
    );
  });

  test('leaves out what only a program of the author reads', () => {
    expect(
      plain(
        '<g data-x="1" x:label="y"><x:view/><metadata><b/></metadata><title>t</title><path d="M0 0"/></g>',
      ),
    ).toBe('<g><path d="M0 0"></path></g>');
  });

  test('has ids of its own on the page, and refers to them', () => {
    expect(plain('<g id="bone"><path id="x" d="M0 0"/><path clip-path="url(#x)" d="M0 0"/></g>')).toBe(
      '<g id="own-a-bone"><path id="own-a-x" d="M0 0"></path><path clip-path="url(#own-a-x)" d="M0 0"></path></g>',
    );
  });

  test('gives black and white a class, so that they follow the room', () => {
    expect(plain('<path fill="#fff" stroke="black" d="M0 0"/>')).toContain(
      'class="own-fill-paper own-stroke-ink"',
    );
  });

  test('never holds more than shapes, whatever is written', () => {
    const name = fc.constantFrom('g', 'path', 'script', 'svg:g', 'x:script', 'style', 'image', 'rect');
    const attribute = fc.constantFrom(
      'd="M0 0"',
      'onload="x"',
      'style="fill:red;behavior:x"',
      'href="http://x"',
      'fill="a&b;"',
    );
    const tag = fc
      .tuple(name, fc.array(attribute, { maxLength: 3 }))
      .map(([own, more]) => `<${own} ${more.join(' ')}></${own}>`);
    fc.assert(
      fc.property(fc.array(tag, { maxLength: 6 }), (tags) => {
        const markup = plain(`<g>${tags.join('')}</g>`);
        expect(markup).not.toMatch(/<(?!\/?(?:g|path|rect)\b)|\son\w+=|style=|&b;/);
      }),
    );
  });
});

describe('reading tags', () => {
  test('knows where each opening tag stands, past comments and declarations', () => {
    const text = '<?xml version="1.0"?>\n<!-- <g> -->\n<svg><g id="a"/></svg>';
    const [root, group] = allElements(elementOf(text));
    expect(text.slice(root!.start, root!.end)).toBe('<svg>');
    expect(text.slice(group!.start, group!.end)).toBe('<g id="a"/>');
    expect(text.slice(group!.attributes[0]!.start).startsWith('id=')).toBe(true);
  });

  test.each([
    ['<svg><g></svg>', '</svg> closes nothing that is open'],
    ['<svg>', '<svg> is not closed'],
    ['<svg/><svg/>', 'there is a second drawing'],
    ['<svg a=b/>', 'this mark begins no tag'],
    ['', 'there is no drawing'],
  ])('finds what is wrong with %s', (text, problem) => {
    expect(readSvg(text)).toMatchObject({ problem });
  });
});

/** Where the shipped file marks a landmark. */
function markOf(id: string): [number, number] {
  const file = resolve(import.meta.dirname, '../../../content/reed-trunks/drawings/obm-1131.svg');
  const [, x, y] = new RegExp(`id="${id}" cx="([\\d.]+)" cy="([\\d.]+)"`).exec(readFileSync(file, 'utf8'))!;
  return [Number(x), Number(y)];
}

describe('the drawing by hand that comes with the tool', () => {
  let drawing: CompiledDrawing;
  beforeAll(async () => {
    const { compiled } = await compileLineage(resolve(import.meta.dirname, '../../../content/reed-trunks'));
    drawing = compiled!.drawings.find(({ own }) => own)!;
  });

  test('says who drew it and whose it is', () => {
    expect(drawing.taxon).toBe('riparhina-dura');
    expect(drawing.own).toMatchObject({ by: 'H. Aldwater', licence: 'CC0-1.0' });
    expect(drawing.own!.bone).toContain('<path');
    expect(drawing.own!.restored).toContain('<path');
  });

  test('stands in the frame with its snout tip at 0 and its eye rim at 100', () => {
    const [a, b, c, d, e, f] = drawing.own!.place;
    // where its file marks the two ends
    const place = ([x, y]: [number, number]) => [a * x + c * y + e, b * x + d * y + f];
    const tip = place(markOf('prosthion'));
    const rim = place(markOf('anterior-orbital-rim'));
    expect(tip[0]).toBeCloseTo(0, 6);
    expect(rim[0]).toBeCloseTo(100, 6);
    expect(rim[1]).toBeCloseTo(drawing.points['anterior-orbital-rim']!.at[1], 6);
  });
});
