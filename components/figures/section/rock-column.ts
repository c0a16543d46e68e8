import { path, type Mark } from '../scene/scene.ts';
import type { SectionFigure } from './section-data.ts';
import type { SectionLayout } from './section-layout.ts';
import type { SectionScales } from './section-scales.ts';

/** Share of the column's width that a rock takes: coarser grains stand out further, as in every field log. */
const widths: Readonly<Record<string, number>> = {
  clay: 0.52,
  silt: 0.66,
  ash: 0.6,
  limestone: 0.78,
  sand: 0.84,
  gravel: 1,
};

/**
 * The rock column from the base up: one box a bed, as wide as its grains are coarse, with the ornament of its rock (dashes for
 * clay, dashes and dots for silt, dots for sand, rings for gravel, bricks for limestone, wedges for ash: common practice of
 * field logs). Without records of rocks one plain box from base to top.
 */
export function rockColumn(figure: SectionFigure, layout: SectionLayout, scales: SectionScales): Mark[] {
  const plain = [{ from: figure.baseM, to: figure.topM, rock: '' }];
  const rocks = figure.rocks.length > 0 ? figure.rocks : plain;
  return rocks.flatMap(({ from, to, rock }): Mark[] => {
    const [top, bottom] = [scales.y(to), scales.y(from)];
    const box = {
      x: layout.column.left,
      y: top,
      width: layout.column.width * (widths[rock] ?? 1),
      height: bottom - top,
    };
    const d = ornament(rock, box, layout.markScale);
    return [
      { layer: 'column', role: `rock rock-${rock || 'plain'}`, shape: { kind: 'rect', ...box } },
      ...(d === ''
        ? []
        : [{ layer: 'column', role: `ornament ornament-${rock}`, shape: { kind: 'path' as const, d } }]),
    ];
  });
}

interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

type Stroke = (x: number, y: number, size: number) => string;

const dash: Stroke = (x, y, size) => path`M${x - size} ${y}H${x + size}`;
const dot: Stroke = (x, y) => path`M${x} ${y}h${0.01}`;
const ring: Stroke = (x, y, size) =>
  path`M${x - size} ${y}a${size} ${size} 0 1 0 ${2 * size} 0a${size} ${size} 0 1 0 ${-2 * size} 0`;
const wedge: Stroke = (x, y, size) =>
  path`M${x - size * 0.8} ${y - size * 0.7}L${x} ${y + size * 0.7}L${x + size * 0.8} ${y - size * 0.7}`;

const strokes: Readonly<Record<string, readonly Stroke[]>> = {
  clay: [dash],
  silt: [dash, dot],
  sand: [dot],
  gravel: [ring],
  ash: [wedge],
};

/** The ornament of a rock in its box: rows of strokes, every other row moved by half a step. */
function ornament(rock: string, box: Box, scale: number): string {
  if (rock === 'limestone') return bricks(box, scale);
  const kinds = strokes[rock];
  if (!kinds) return '';
  const size = 2.6 * scale;
  const [across, down] = [9 * scale, 6 * scale];
  const rows = Math.max(1, Math.floor(box.height / down));
  let d = '';
  for (let row = 0; row < rows; row++) {
    const y = box.y + ((row + 0.5) * box.height) / rows;
    const start = box.x + across * (row % 2 === 0 ? 0.55 : 1.05);
    for (let x = start, at = row; x < box.x + box.width - size; x += across, at++)
      d += kinds[at % kinds.length]!(x, y, size);
  }
  return d;
}

function bricks({ x, y, width, height }: Box, scale: number): string {
  const rows = Math.max(1, Math.floor(height / (6 * scale)));
  const rise = height / rows;
  let d = '';
  for (let row = 0; row < rows; row++) {
    if (row > 0) d += path`M${x} ${y + row * rise}H${x + width}`;
    for (let at = x + 11 * scale * (row % 2 === 0 ? 0.6 : 1.1); at < x + width - 1; at += 11 * scale)
      d += path`M${at} ${y + row * rise}v${rise}`;
  }
  return d;
}
