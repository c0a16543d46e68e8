import { withoutMarks } from '../../messages/without-marks.ts';

/** One run of text in one voice: `name` is a scientific name, `strong` a figure, `plain` the rest. */
export interface TextRun {
  text: string;
  voice: 'plain' | 'name' | 'strong';
}

export type Shape =
  | { kind: 'path'; d: string; dashes?: string }
  | { kind: 'rect'; x: number; y: number; width: number; height: number }
  | { kind: 'circle'; x: number; y: number; radius: number }
  | { kind: 'picture'; href: string; x: number; y: number; width: number; height: number }
  | {
      kind: 'text';
      x: number;
      y: number;
      size: number;
      runs: TextRun[];
      anchor: 'start' | 'middle' | 'end';
      turned?: boolean;
    }
  | {
      kind: 'use';
      target: string;
      x: number;
      y: number;
      scale: number;
      /** Times that it is longer along x; 1 if left out. */
      stretch?: number;
    };

/** One thing drawn. `datum` names the taxon, fork or age that it stands for; `role` is its class in the style sheet. */
export interface Mark {
  layer: string;
  role: string;
  datum?: string;
  shape: Shape;
}

/** Everything on one plate, in drawing order, in CSS pixels. */
export interface Scene {
  width: number;
  height: number;
  marks: Mark[];
}

/** A number of pixels as it stands in SVG: tenths, without trailing zeros. The one exit of a plate's coordinates. */
export function coordinate(value: number): string {
  return rounded(value, 10);
}

/** The same in hundredths, for a drawing that is scaled up, and for a scale itself. */
export function fineCoordinate(value: number): string {
  return rounded(value, 100);
}

function rounded(value: number, parts: number): string {
  if (!Number.isFinite(value)) throw new Error(`a coordinate must be a finite number, not ${value}`);
  const nearest = Math.round(value * parts) / parts;
  return Object.is(nearest, -0) ? '0' : String(nearest);
}

/** Path data from commands and numbers: `path\`M${x} ${y}H${end}\``, rounded at the exit. */
export function path(strings: TemplateStringsArray, ...values: number[]): string {
  return strings.reduce((text, part, index) => text + coordinate(values[index - 1]!) + part);
}

/** The same in hundredths. */
export function finePath(strings: TemplateStringsArray, ...values: number[]): string {
  return strings.reduce((text, part, index) => text + fineCoordinate(values[index - 1]!) + part);
}

export function line(x1: number, y1: number, x2: number, y2: number): Shape {
  return { kind: 'path', d: path`M${x1} ${y1}L${x2} ${y2}` };
}

/** One line of text in one voice. */
export function text(
  x: number,
  y: number,
  size: number,
  content: string,
  anchor: 'start' | 'middle' | 'end' = 'start',
  voice: TextRun['voice'] = 'plain',
): Shape {
  return { kind: 'text', x, y, size, anchor, runs: [{ text: content, voice }] };
}

/** Breaks a text into lines of at most so many letters, at spaces; a longer word has a line of its own. */
export function wrap(content: string, letters: number): string[] {
  const lines: string[] = [];
  for (const word of content.split(/\s+/).filter(Boolean)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + word.length < letters)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** Width of a text in the sans face, near enough to tell whether it fits. */
export function textWidth(content: string, size: number): number {
  return withoutMarks(content).length * size * 0.5;
}
