import type { Scales } from './scales.ts';
import { path, type Mark } from './scene.ts';

/** The 95% interval along a branch, from its older end to its younger, in trait units. */
export interface Ribbon {
  /** The datum that a step calls it by. */
  id: string;
  points: { ageMa: number; low: number; high: number }[];
}

/** Pale ribbons under the lines of descent: what can be said of a branch on which nothing was found. */
export function ribbonMarks(ribbons: readonly Ribbon[], scales: Scales): Mark[] {
  return ribbons.map(({ id, points }): Mark => {
    const up = points.map(({ ageMa, low }) => path`${scales.x(low)} ${scales.y(ageMa)}`);
    const down = points.toReversed().map(({ ageMa, high }) => path`${scales.x(high)} ${scales.y(ageMa)}`);
    const d = `M${[...up, ...down].join('L')}Z`;
    return { layer: 'ribbons', role: 'ribbon', datum: id, shape: { kind: 'path', d } };
  });
}
