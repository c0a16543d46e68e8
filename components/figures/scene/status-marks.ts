import { approximateGap, glyph } from './glyphs.ts';
import type { PlateLayout } from './layout.ts';
import type { PlateData, PlateTaxon } from './plate-data.ts';
import { tipValue } from './branch-list.ts';
import { ruling } from './ruling.ts';
import type { Scales } from './scales.ts';
import { path, type Mark, type Shape } from './scene.ts';

/** The mark of one animal with what it reaches: bar of ages, whisker, arrow or ruled box. */
export interface PlacedMark {
  taxon: PlateTaxon;
  x: number;
  y: number;
  /** Box round everything drawn for it. */
  box: { left: number; right: number; top: number; bottom: number };
  marks: Mark[];
}

/** Marks of all animals, in the grammar of the four statuses. */
export function statusMarks(data: PlateData, layout: PlateLayout, scales: Scales): PlacedMark[] {
  return data.taxa.map((taxon) => placeMark(taxon, layout, scales));
}

function placeMark(taxon: PlateTaxon, layout: PlateLayout, scales: Scales): PlacedMark {
  const known = tipValue(taxon);
  // An animal of which nothing is known stands in a lane of its own, beyond the last value.
  const x = known === undefined ? layout.chart.right - 14 * layout.markScale : scales.x(known);
  const y = scales.y(taxon.placedMa);
  const draw = { measured, bounded, inferred, unknown }[taxon.status];
  const { parts, left, right } = draw(taxon, x, y, layout.markScale, scales);
  const reach = 7 * layout.markScale;
  const marks = parts.map(([role, shape]): Mark => ({ layer: 'marks', role, datum: taxon.id, shape }));
  return {
    taxon,
    x,
    y,
    box: {
      left: Math.min(left, x - reach),
      right: Math.max(right, x + reach),
      top: Math.min(scales.y(taxon.lastMa), y - reach),
      bottom: Math.max(scales.y(taxon.firstMa), y + reach),
    },
    marks,
  };
}

type Part = readonly [role: string, shape: Shape];
interface Drawn {
  parts: Part[];
  left: number;
  right: number;
}

function measured(taxon: PlateTaxon, x: number, y: number, scale: number, scales: Scales): Drawn {
  const left = scales.x(taxon.interval[0] ?? taxon.estimate!);
  const right = scales.x(taxon.interval[1] ?? taxon.estimate!);
  const tick = 3.6 * scale;
  const whisker = path`M${left} ${y}H${right}M${left} ${y - tick}V${y + tick}M${right} ${y - tick}V${y + tick}`;
  return {
    left,
    right,
    parts: [
      ...ageBar(taxon, x, scale, scales),
      ['whisker', { kind: 'path', d: whisker }],
      ...glyph('measured', x, y, scale).map((part): Part => [part.role, part.shape]),
      ...(taxon.approximate
        ? [approximateGap(x, y, scale)].map((part): Part => [part.role, part.shape])
        : []),
    ],
  };
}

function bounded(taxon: PlateTaxon, x: number, y: number, scale: number, scales: Scales): Drawn {
  const toward = taxon.atLeast === undefined ? -1 : 1;
  const end = x + toward * 40 * scale;
  const top = Math.min(scales.y(taxon.lastMa), y - 7 * scale);
  const bottom = Math.max(scales.y(taxon.firstMa), y + 7 * scale);
  const head = path`M${end - toward * 5 * scale} ${y - 4 * scale}L${end} ${y}L${end - toward * 5 * scale} ${y + 4 * scale}`;
  return {
    left: Math.min(x, end),
    right: Math.max(x, end),
    parts: [
      ['limit-wall', { kind: 'path', d: path`M${x} ${top}V${bottom}` }],
      ['arrow', { kind: 'path', d: path`M${x + toward * 6 * scale} ${y}H${end}` }],
      ['arrow-head', { kind: 'path', d: head }],
      ...glyph('bounded', x, y, scale, toward).map((part): Part => [part.role, part.shape]),
    ],
  };
}

function inferred(taxon: PlateTaxon, x: number, y: number, scale: number, scales: Scales): Drawn {
  const left = scales.x(taxon.interval[0] ?? scales.reach[0]);
  const right = scales.x(taxon.interval[1] ?? scales.reach[1]);
  const top = Math.min(scales.y(taxon.lastMa), y - 8 * scale);
  const bottom = Math.max(scales.y(taxon.firstMa), y + 8 * scale);
  const hook = 5 * scale;
  const brackets = path`M${left + hook} ${top}H${left}V${bottom}H${left + hook}M${right - hook} ${top}H${right}V${bottom}H${right - hook}`;
  return {
    left,
    right,
    parts: [
      ['ruled-paper', { kind: 'rect', x: left, y: top, width: right - left, height: bottom - top }],
      ['ruled', { kind: 'path', d: ruling(left, top, right - left, bottom - top, 5 * scale) }],
      ['bracket', { kind: 'path', d: brackets }],
      ...spanEnds(taxon, left, right, y, scale, scales),
      ...glyph('inferred', x, y, scale).map((part): Part => [part.role, part.shape]),
    ],
  };
}

/** Faint ends beyond the brackets: how far other trees and ages push them. Nothing where they do not. */
function spanEnds(
  { span }: PlateTaxon,
  left: number,
  right: number,
  y: number,
  scale: number,
  scales: Scales,
): Part[] {
  const rise = 4 * scale;
  const ends = [
    { edge: left, at: span?.[0] ?? undefined },
    { edge: right, at: span?.[1] ?? undefined },
  ].flatMap(({ edge, at }, side) => {
    const x = at === undefined ? edge : scales.x(at);
    return (side === 0 ? edge - x : x - edge) > 1
      ? path`M${edge} ${y}H${x}M${x} ${y - rise}V${y + rise}`
      : [];
  });
  return ends.length > 0 ? [['span-end', { kind: 'path', d: ends.join('') }]] : [];
}

function unknown(taxon: PlateTaxon, x: number, y: number, scale: number, scales: Scales): Drawn {
  const ends = path`M${x} ${scales.y(taxon.firstMa)}V${y + 7 * scale}M${x} ${y - 7 * scale}V${scales.y(taxon.lastMa)}`;
  return {
    left: x,
    right: x,
    parts: [
      ['unknown-span', { kind: 'path', d: ends }],
      ...glyph('unknown', x, y, scale).map((part): Part => [part.role, part.shape]),
    ],
  };
}

/** Solid from first to last find with a flat cap where the record ends; an outline where one bed is all there is. */
function ageBar(taxon: PlateTaxon, x: number, scale: number, scales: Scales): Part[] {
  if (taxon.living && taxon.firstMa === 0) return [];
  const top = scales.y(taxon.lastMa);
  const bottom = scales.y(taxon.firstMa);
  const width = 5 * scale;
  const bar: Shape = { kind: 'rect', x: x - width / 2, y: top, width, height: bottom - top };
  if (taxon.oneBed) return [['one-bed', bar]];
  const cap: Part = ['cap', { kind: 'path', d: path`M${x - width * 1.1} ${top}H${x + width * 1.1}` }];
  return taxon.living ? [['find-bar', bar]] : [['find-bar', bar], cap];
}
