import { path } from './scene.ts';

/**
 * Ruling that fills a box: parallel strokes at 45 degrees, cut at its edges. Drawn as lines, not as a pattern, so that it
 * prints, needs no id, and survives forced colours. Empty for a box without area.
 */
export function ruling(left: number, top: number, width: number, height: number, spacing: number): string {
  if (width <= 0 || height <= 0) return '';
  let d = '';
  for (let offset = spacing / 2; offset < width + height; offset += spacing) {
    const startX = Math.max(0, offset - height);
    const endX = Math.min(width, offset);
    d += path`M${left + startX} ${top + offset - startX}L${left + endX} ${top + offset - endX}`;
  }
  return d;
}
