import { describe, expect, it } from 'vitest';
import { frameOf } from '../../scripts/compile/findings/frame.ts';
import { countFindings, printFinding } from '../../scripts/compile/findings/print.ts';
import { severities, type FindingCode } from '../../scripts/compile/findings/codes.ts';
import { openReport } from '../../scripts/compile/findings/report.ts';
import { didYouMean, findNearest } from '../../scripts/compile/findings/suggest.ts';
import { sourceText } from '../../scripts/compile/source/source-text.ts';

describe('findNearest', () => {
  it.each([
    ['upper-shlef', 'upper-shelf'],
    ['UPPER-SHELF', 'upper-shelf'],
    ['uppershelf', 'upper-shelf'],
    ['gorse', undefined],
  ])('finds what "%s" was meant to be, or nothing', (word, nearest) => {
    expect(findNearest(word, ['lower-shelf', 'upper-shelf'])).toBe(nearest);
  });

  it('asks nothing when nothing is near', () => {
    expect(didYouMean('x', ['lower-shelf'])).toBe('');
  });
});

describe('frameOf', () => {
  it('marks the span under its line', () => {
    const source = sourceText('a.yaml', 'one\ntwo: three\n');
    expect(frameOf({ source, start: 9, end: 14 })).toBe('2 | two: three\n  |      ^^^^^');
  });

  it('cuts a long line around the span', () => {
    const source = sourceText('a.yaml', `${'x'.repeat(500)}HERE${'y'.repeat(500)}`);
    const [line, carets] = frameOf({ source, start: 500, end: 504 }).split('\n');
    expect(line!.length).toBeLessThan(120);
    expect(line!.slice(carets!.indexOf('^'), carets!.lastIndexOf('^') + 1)).toBe('HERE');
  });
});

describe('openReport', () => {
  const source = sourceText('b.yaml', 'one\ntwo\n');
  const span = (start: number) => ({ source, start, end: start + 3 });

  it('lists findings by file, line and column, and the same one once', () => {
    const report = openReport();
    const earlier = sourceText('a.yaml', 'x');
    report.add('unknown-key', span(4), 'second', 'mend it');
    report.add('unknown-key', span(0), 'first', 'mend it');
    report.add('unknown-key', span(0), 'first', 'mend it');
    report.add('reference-unused', { source: earlier, start: 0, end: 1 }, 'other file', 'mend it');
    expect(report.list().map(({ message }) => message)).toEqual(['other file', 'first', 'second']);
    expect(report.hasErrors()).toBe(true);
    expect(countFindings(report.list())).toBe('2 errors, 1 warning');
  });

  it.each(Object.keys(severities) as FindingCode[])(
    'keeps fifty of %s in a file, says how many more there are, and counts each file for itself',
    (code) => {
      const report = openReport();
      const files = ['a.yaml', 'b.yaml'].map((file) => sourceText(file, 'x\n'.repeat(70)));
      for (const own of files)
        for (let line = 0; line < (own === files[0] ? 70 : 50); line++)
          report.add(code, { source: own, start: 2 * line, end: 2 * line + 1 }, `no ${line}`, 'mend it');
      const lists = Object.values(Object.groupBy(report.list(), ({ file }) => file));
      expect(lists.map((list) => list!.length)).toEqual([50, 50]);
      expect(lists.map((list) => list!.at(-1)!.advice)).toEqual([
        'mend it; and 20 more like this in this file',
        'mend it',
      ]);
      expect(report.hasErrors()).toBe(severities[code] === 'error');
    },
  );

  it('has no errors when it holds warnings only', () => {
    const report = openReport();
    report.add('reference-unused', span(0), 'spare', 'cite it');
    expect(report.hasErrors()).toBe(false);
  });

  it('prints place, severity, line, carets and advice', () => {
    const report = openReport();
    report.add('unknown-key', span(4), 'unknown key "two"', 'remove it');
    expect(printFinding(report.list()[0]!)).toBe(
      'b.yaml:2:1  error: unknown key "two"  [unknown-key]\n    2 | two\n      | ^^^\n    remove it',
    );
  });
});
