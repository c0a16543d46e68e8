import { expect, test } from 'vitest';
import { paperColours, paperStyle } from '../../../components/pages/og/_picture/paper-style.ts';
import { readFigureStyle, readTokens } from '../fixtures/figure-style.ts';

const [figure, tokens] = await Promise.all([readFigureStyle(), readTokens()]);
const style = paperStyle(figure, tokens);

test('a variable becomes its colour on paper', () => {
  const css = ':root { --ink: light-dark(#123456, #ffffff); } ';
  expect(paperStyle('.disc { fill: var(--ink); }', css)).toBe('.disc { fill: #123456; }');
});

test('a rule for certain screens is left out with all that it holds', () => {
  expect(paperStyle('@media print { .a { fill: red; } } .b { fill: blue; }', '').trim()).toBe(
    '.b { fill: blue; }',
  );
});

test('a declaration with a function that the rasteriser lacks is dropped alone', () => {
  expect(paperStyle('.a { fill: color-mix(in srgb, red, blue); stroke: red; }', '')).toMatch(
    /^\.a \{\s+stroke: red; \}$/,
  );
});

test('nothing of the figure is left that the rasteriser does not know', () => {
  expect(style).not.toMatch(/var\(|light-dark|color-mix|@/);
});

test.each(['disc', 'branch', 'diamond', 'bracket', 'find-bar'])(
  'the figure gives %s a plain colour',
  (role) => {
    const rule = new RegExp(`\\.${role}\\b[^{}]*\\{[^{}]*#[0-9a-f]{3,6}`);
    expect(style).toMatch(rule);
  },
);

test('the colours on paper are the first of each pair', () => {
  expect(paperColours(tokens).get('--paper')).toBe('#f8f3e8');
});
