import { describe, expect, it } from 'vitest';
import { openReport } from '../../scripts/compile/findings/report.ts';
import { positionAt, sourceText } from '../../scripts/compile/source/source-text.ts';
import { parseYaml } from '../../scripts/compile/source/yaml-source.ts';

const read = (text: string) => parseYaml(sourceText('t.yaml', text), openReport())!;

describe('parseYaml', () => {
  // Tag resolution of the core schema: YAML 1.2.2, section 10.3.2, and the words of YAML 1.1 that it gave up.
  it.each([
    ['~', null],
    ['null', null],
    ['true', true],
    ['False', false],
    ['0', 0],
    ['-19', -19],
    ['0o7', 7],
    ['0x3A', 58],
    ['12e03', 12_000],
    ['-2E+05', -200_000],
    ['.inf', Infinity],
    ['NO', 'NO'],
    ['yes', 'yes'],
    ['on', 'on'],
    ['1:30', '1:30'],
    ['2026-11-25', '2026-11-25'],
    ['010', 10],
  ])('takes %s for what the core schema says', (text, value) => {
    expect(read(`key: ${text}`).value).toEqual({ key: value });
  });

  it('keeps the digits that the author wrote', () => {
    expect(read('age: { from: 43.0 }').writtenAt(['age', 'from'])).toBe('43.0');
  });

  it('points at a value, at a key, and at the first key of a parent whose child is missing', () => {
    const record = read('a: 1\nlist:\n  - { b: 2, c: 3 }\n');
    const place = (span: ReturnType<typeof record.at>) => positionAt(span.source, span.start);
    expect(place(record.at(['list', 0, 'c']))).toEqual({ line: 3, column: 16 });
    expect(place(record.atKey(['list', 0], 'c'))).toEqual({ line: 3, column: 13 });
    expect(place(record.at(['list', 0, 'missing']))).toEqual({ line: 3, column: 7 });
  });

  it('reads a key called __proto__ without touching anything else', () => {
    const { value } = read('__proto__: { polluted: true }');
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
    expect(Object.keys(value as object)).toEqual(['__proto__']);
  });

  it('refuses brackets a hundred thousand deep within a second', () => {
    const started = performance.now();
    const report = openReport();
    expect(parseYaml(sourceText('t.yaml', `a: ${'['.repeat(100_000)}`), report)).toBeUndefined();
    expect(report.list().map(({ code }) => code)).toEqual(['too-deep']);
    expect(performance.now() - started).toBeLessThan(1000);
  });
});
