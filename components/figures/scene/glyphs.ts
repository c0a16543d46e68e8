import type { Status } from '../../../scripts/compile/contract.ts';
import { path, type Shape } from './scene.ts';

/** One stroke or fill of a glyph. */
export interface GlyphPart {
  role: string;
  shape: Shape;
}

/**
 * The mark of a status round a centre, at a scale of about 12 pixels: disc, half disc on its wall, open diamond,
 * dotted ring with a question mark. The same shapes stand in figures, tables, sentences and the key.
 * `toward` turns the half disc to the side on which the value lies (1 right: at least; -1 left: at most).
 */
export function glyph(status: Status, x: number, y: number, scale: number, toward: 1 | -1 = 1): GlyphPart[] {
  switch (status) {
    case 'measured':
      return [{ role: 'disc', shape: { kind: 'circle', x, y, radius: 5.2 * scale } }];
    case 'bounded':
      return halfDisc(x, y, scale, toward);
    case 'inferred':
      return [{ role: 'diamond', shape: diamond(x, y, 6.4 * scale) }];
    case 'unknown':
      return unknownRing(x, y, scale);
  }
}

/** The gap that marks an approximate value: a slit of paper through the disc. */
export function approximateGap(x: number, y: number, scale: number): GlyphPart {
  return {
    role: 'gap',
    shape: { kind: 'rect', x: x - 6.4 * scale, y: y - 0.9 * scale, width: 12.8 * scale, height: 1.8 * scale },
  };
}

function halfDisc(x: number, y: number, scale: number, toward: 1 | -1): GlyphPart[] {
  const radius = 5.6 * scale;
  const sweep = toward === 1 ? 1 : 0;
  const d = path`M${x} ${y - radius}A${radius} ${radius} 0 0 ${sweep} ${x} ${y + radius}Z`;
  return [
    { role: 'half', shape: { kind: 'path', d } },
    { role: 'wall', shape: { kind: 'path', d: path`M${x} ${y - 7.4 * scale}V${y + 7.4 * scale}` } },
  ];
}

function diamond(x: number, y: number, reach: number): Shape {
  return { kind: 'path', d: path`M${x} ${y - reach}L${x + reach} ${y}L${x} ${y + reach}L${x - reach} ${y}Z` };
}

function unknownRing(x: number, y: number, scale: number): GlyphPart[] {
  return [
    { role: 'ring', shape: { kind: 'circle', x, y, radius: 6.6 * scale } },
    {
      role: 'query',
      shape: {
        kind: 'text',
        x,
        y: y + 3.7 * scale,
        size: 10.5 * scale,
        anchor: 'middle',
        runs: [{ text: '?', voice: 'strong' }],
      },
    },
  ];
}
