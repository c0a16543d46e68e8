import { withoutMarks } from '../../messages/without-marks.ts';
import { measureMarks, type MeasureWords } from './measure-lines.ts';
import type { PlateLayout } from './layout.ts';
import type { PlateData } from './plate-data.ts';
import type { Scales } from './scales.ts';
import { scaleBarMarks } from './scale-bar.ts';
import type { PlacedMark } from './status-marks.ts';
import { line, path, text, type Mark } from './scene.ts';

/** Points of a skull that the trait is read from, in the drawing frame (0 to 100 along the axis; y down from the tooth line). */
export interface SkullAnchors {
  zero: readonly [number, number];
  reading: readonly [number, number];
  hundred: readonly [number, number];
  /** The front end is a break, not the true landmark. */
  broken: boolean;
  /** Lengths of part and whole in mm, where the drawing is of one specimen that gives them. */
  mm?: { part: number; whole: number } | undefined;
  /** Millimetres in one unit of the trait, where the size of the skull is known. */
  mmPerUnit?: number | undefined;
}

export interface FocusWords {
  /** Printed value, as in a sentence: `58 ± 2`, `at least 31`, `41 [30–53]`. */
  value: string;
  /** What stands beside the two lengths that make a share. */
  measure: MeasureWords;
  /** What the start of the ruler is called where bone ends there. */
  breakWord: string;
}

/**
 * What belongs to the animal in focus: its skull on the ruler, the plumb line from the bone to the axis, the dotted
 * line that carries the reading to its mark, and the flag with the value. Hidden unless that animal is in focus.
 */
export function focusMarks(
  placed: PlacedMark,
  anchors: SkullAnchors | undefined,
  data: PlateData,
  layout: PlateLayout,
  scales: Scales,
  words: FocusWords,
): Mark[] {
  const { taxon } = placed;
  const mark = (role: string, shape: Mark['shape']): Mark => ({
    layer: 'focus',
    role,
    datum: taxon.id,
    shape,
  });
  const ring = mark('focus-ring', {
    kind: 'circle',
    x: placed.x,
    y: placed.y,
    radius: 11.5 * layout.markScale,
  });
  if (taxon.status === 'unknown') return [ring];
  const below = layout.rulerTop + layout.fontSize * 2;
  const carry = mark('carry', line(placed.x, below, placed.x, placed.y - 11 * layout.markScale));
  const broken = anchors?.broken ? breakWord(layout, scales, words.breakWord, mark) : [];
  const skull =
    data.ruler && anchors ? skullMarks(taxon.id, taxon.status, anchors, layout, scales, mark) : [];
  const measure = data.ruler && anchors ? measured(taxon, anchors, layout, scales, words.measure, mark) : [];
  const plumb = plumbMarks(taxon, anchors, layout, scales, mark);
  return [
    ring,
    carry,
    ...broken,
    ...skull,
    ...measure,
    ...(skull.length > 0 ? scaleBarMarks(anchors?.mmPerUnit, layout, scales, mark) : []),
    ...plumb,
    ...flag(placed.x, words.value, layout, mark),
  ];
}

/** The lengths are those of bone: an inferred value has none. */
function measured(
  taxon: PlacedMark['taxon'],
  anchors: SkullAnchors,
  layout: PlateLayout,
  scales: Scales,
  words: MeasureWords,
  mark: MarkMaker,
): Mark[] {
  const value =
    taxon.status === 'measured' ? taxon.estimate : taxon.status === 'bounded' ? anchors.reading[0] : null;
  return value === null ? [] : measureMarks(anchors, value, layout, scales, words, mark);
}

type MarkMaker = (role: string, shape: Mark['shape']) => Mark;

function skullMarks(
  id: string,
  status: string,
  anchors: SkullAnchors,
  layout: PlateLayout,
  scales: Scales,
  mark: MarkMaker,
): Mark[] {
  const y = (value: number) => layout.skullBase + value * scales.unit;
  const inferred = status === 'inferred' ? ' plumb-inferred' : '';
  const ends = [
    [0, anchors.zero],
    [100, anchors.hundred],
  ] as const;
  return [
    mark(`plumb plumb-end${inferred}`, {
      kind: 'path',
      d: ends.map(([at, point]) => path`M${scales.x(at)} ${y(point[1])}V${layout.rulerTop}`).join(''),
    }),
    mark('skull', {
      kind: 'use',
      target: `skull-${id}`,
      x: scales.x(0),
      y: layout.skullBase,
      scale: scales.unit,
    }),
    ...ends.map(([at, point]) =>
      mark('anchor anchor-end', {
        kind: 'circle',
        x: scales.x(at),
        y: y(point[1]),
        radius: 2.3 * layout.markScale,
      }),
    ),
  ];
}

function plumbMarks(
  taxon: PlacedMark['taxon'],
  anchors: SkullAnchors | undefined,
  layout: PlateLayout,
  scales: Scales,
  mark: MarkMaker,
): Mark[] {
  const value = taxon.estimate ?? taxon.atLeast ?? taxon.atMost;
  if (!anchors || value === undefined || value === null) return [];
  const y = layout.skullBase + anchors.reading[1] * scales.unit;
  const inferred = taxon.status === 'inferred';
  const drop = mark(
    `plumb plumb-reading${inferred ? ' plumb-inferred' : ''}`,
    line(scales.x(value), y, scales.x(value), layout.rulerTop),
  );
  const dot = mark(inferred ? 'anchor anchor-open' : 'anchor', {
    kind: 'circle',
    x: scales.x(value),
    y,
    radius: 2.7 * layout.markScale,
  });
  if (!inferred) return [drop, dot];
  const [low, high] = [scales.x(taxon.interval[0] ?? value), scales.x(taxon.interval[1] ?? value)];
  const band = path`M${low} ${y - 6}V${layout.rulerTop}M${high} ${y - 6}V${layout.rulerTop}M${low} ${y}H${high}`;
  return [mark('plumb plumb-limit', { kind: 'path', d: band }), drop, dot];
}

/** The name of the ruler's start on a broken skull. */
function breakWord(layout: PlateLayout, scales: Scales, word: string, mark: MarkMaker): Mark[] {
  const size = layout.fontSize * 0.96;
  const y = layout.rulerTop + layout.fontSize * 0.55;
  return [mark('ruler-break', text(scales.x(0) - 7, y, size, word, 'end', 'strong'))];
}

function flag(x: number, value: string, layout: PlateLayout, mark: MarkMaker): Mark[] {
  const size = layout.fontSize * 1.2;
  const width = withoutMarks(value).length * size * 0.56 + size;
  const height = layout.fontSize * 1.9;
  const left = Math.min(
    Math.max(x - width / 2, layout.chart.left - layout.fontSize),
    layout.chart.right - width,
  );
  const top = layout.rulerTop - height - layout.fontSize * 0.55;
  return [
    mark('flag', { kind: 'rect', x: left, y: top, width, height }),
    mark('flag-value', {
      kind: 'text',
      x: left + width / 2,
      y: top + height / 2 + size * 0.35,
      size,
      anchor: 'middle',
      runs: [{ text: value, voice: 'strong' }],
    }),
  ];
}
