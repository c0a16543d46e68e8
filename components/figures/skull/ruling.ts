import type { PlanePoint } from '../../../analysis/geometry/index.ts';
import { finePath } from '../scene/scene.ts';

type Ring = readonly PlanePoint[];

/** Straight lines at an angle, `spacing` apart, over the whole plane in one phase, so that neighbours line up. */
export interface RulingDirection {
  readonly angleRad: number;
  readonly spacing: number;
}

/**
 * Path data of ruling inside a ring and inside a region (rings by the even-odd rule), but outside all rings that lie
 * in front. Cost grows with lines times edges.
 */
export function ruleRing(
  ring: Ring,
  region: readonly Ring[],
  inFront: readonly Ring[],
  { angleRad, spacing }: RulingDirection,
): string {
  const [cosine, sine] = [Math.cos(angleRad), Math.sin(angleRad)];
  const turn = (each: Ring): PlanePoint[] =>
    each.map(([x, y]) => [x * cosine + y * sine, y * cosine - x * sine]);
  const [shape, covers] = [turn(ring), inFront.map(turn)];
  const area = region.map(turn);
  const heights = shape.map(([, y]) => y);
  const lines: string[] = [];
  for (let row = Math.ceil(Math.min(...heights) / spacing); row * spacing < Math.max(...heights); row++) {
    const y = row * spacing;
    let spans = both(spansAt([shape], y), spansAt(area, y));
    for (const cover of covers) spans = without(spans, spansAt([cover], y));
    for (const [from, to] of spans)
      if (to - from > spacing * 0.2) lines.push(segment(from, to, y, cosine, sine));
  }
  return lines.join('');
}

function segment(from: number, to: number, y: number, cosine: number, sine: number): string {
  const back = (x: number): PlanePoint => [x * cosine - y * sine, x * sine + y * cosine];
  const [start, end] = [back(from), back(to)];
  return finePath`M${start[0]} ${start[1]}L${end[0]} ${end[1]}`;
}

type Span = readonly [from: number, to: number];

function spansAt(rings: readonly Ring[], y: number): Span[] {
  const crossings: number[] = [];
  for (const ring of rings)
    ring.forEach(([x, height], index) => {
      const [nextX, nextHeight] = ring[(index + 1) % ring.length]!;
      if (height > y !== nextHeight > y)
        crossings.push(x + ((nextX - x) * (y - height)) / (nextHeight - height));
    });
  crossings.sort((one, other) => one - other);
  return Array.from({ length: crossings.length >> 1 }, (_, pair) => [
    crossings[pair * 2]!,
    crossings[pair * 2 + 1]!,
  ]);
}

function both(spans: readonly Span[], others: readonly Span[]): Span[] {
  return spans.flatMap(([from, to]) =>
    others.flatMap(([start, end]): Span[] => {
      const [low, high] = [Math.max(from, start), Math.min(to, end)];
      return high > low ? [[low, high]] : [];
    }),
  );
}

function without(spans: readonly Span[], holes: readonly Span[]): Span[] {
  return holes.reduce<Span[]>(
    (left, [start, end]) =>
      left
        .flatMap(([from, to]): Span[] => [
          ...(start > from ? [[from, Math.min(to, start)] as const] : []),
          ...(end < to ? [[Math.max(from, end), to] as const] : []),
        ])
        .filter(([from, to]) => to > from),
    [...spans],
  );
}
