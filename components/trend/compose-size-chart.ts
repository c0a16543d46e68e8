import { scaleLinear, scaleLog } from 'd3';
import type { CompiledSize, CompiledTrait } from '../../scripts/compile/contract.ts';
import { glyph } from '../figures/scene/glyphs.ts';
import { line, path, text, type Mark, type Scene } from '../figures/scene/scene.ts';
import { chartSize } from './compose-change-chart.ts';

/** What one chart of size shows: series across, size upward. */
export interface SizeChart {
  series: { letter: string; points: CompiledSize['trait']['points']; line: CompiledSize['trait']['line'] }[];
  /** Scale of the values across; size is always logarithmic. */
  scale: CompiledTrait['scale'];
  words: { across: string; up: string };
}

const chart = { left: 44, right: chartSize.width - 14, top: 34, bottom: chartSize.height - 46 };
const fontSize = 13;
const markScale = 0.7;

interface Axes {
  x: (value: number) => number;
  y: (sizeMm: number) => number;
  valueTicks: number[];
  sizeTicks: number[];
}

/** A scatter of the marks of the plate against size, with fitted lines and bands behind. Undefined without a point. */
export function composeSizeChart(request: SizeChart): Scene | undefined {
  const points = request.series.flatMap((series) => series.points);
  if (points.length === 0) return undefined;
  const axes = axesOf(request);
  return {
    ...chartSize,
    marks: [
      ...grid(axes, request.words),
      ...request.series.flatMap((series) => fitted(series, axes)),
      ...joins(request.series, axes),
      ...request.series.flatMap((series) => series.points.flatMap((point) => pointMarks(point, axes))),
    ],
  };
}

function axesOf({ series, scale }: SizeChart): Axes {
  const values = series.flatMap(({ points, line: fit }) => [
    ...points.flatMap(({ estimate, atLeast, atMost }) => [estimate, atLeast, atMost]),
    ...fit.map(({ median }) => median),
  ]);
  const known = values.filter((value) => typeof value === 'number');
  const sizes = series.flatMap(({ points }) => points.map(({ sizeMm }) => sizeMm));
  const y = scaleLog(stretched(sizes), [chart.bottom, chart.top]);
  const across: [number, number] = [chart.left + 8, chart.right - 8];
  const log = scale === 'log' && known.every((value) => value > 0);
  const x = log
    ? scaleLog(stretched(known), across)
    : scaleLinear([Math.min(0, ...known), Math.max(...known)], across).nice(5);
  return {
    x: (value) => x(value),
    y: (sizeMm) => y(sizeMm),
    valueTicks: log ? logTicks(x.domain() as [number, number]) : x.ticks(5),
    sizeTicks: logTicks(y.domain() as [number, number]),
  };
}

/** A little room on both sides, by factor. */
function stretched(values: readonly number[]): [number, number] {
  return [Math.min(...values) / 1.08, Math.max(...values) * 1.08];
}

/** Round numbers within a range of a logarithmic axis: ones, twos and fives, more digits where these are too few, and even steps on a short axis. */
export function logTicks([low, high]: readonly [number, number]): number[] {
  const within = (digits: readonly number[]) => {
    const first = Math.floor(Math.log10(low));
    const decades = Array.from(
      { length: Math.ceil(Math.log10(high)) - first + 1 },
      (_, k) => 10 ** (first + k),
    );
    return decades
      .flatMap((ten) => digits.map((digit) => digit * ten))
      .filter((tick) => tick >= low && tick <= high);
  };
  const choices = [within([1, 2, 5]), within([1, 2, 3, 4, 5, 6, 8])];
  return choices.find((ticks) => ticks.length >= 3) ?? scaleLinear([low, high], [0, 1]).ticks(4);
}

function grid(axes: Axes, words: SizeChart['words']): Mark[] {
  const mark = (role: string, shape: Mark['shape']): Mark => ({ layer: 'grid', role, shape });
  const foot = chart.bottom + fontSize * 1.25;
  return [
    mark('axis-word', text(4, fontSize * 1.25, fontSize, words.up)),
    ...axes.sizeTicks.flatMap((tick) => [
      mark('age-line', line(chart.left, axes.y(tick), chart.right, axes.y(tick))),
      mark('value-tick', text(chart.left - 7, axes.y(tick) + fontSize * 0.34, fontSize, String(tick), 'end')),
    ]),
    ...axes.valueTicks.flatMap((tick) => [
      mark('value-line', line(axes.x(tick), chart.top, axes.x(tick), chart.bottom)),
      mark('value-tick', text(axes.x(tick), foot, fontSize, String(tick), 'middle')),
    ]),
    mark(
      'axis-word',
      text((chart.left + chart.right) / 2, foot + fontSize * 1.35, fontSize, words.across, 'middle'),
    ),
  ];
}

function fitted({ letter, line: fit }: SizeChart['series'][number], axes: Axes): Mark[] {
  if (fit.length < 2) return [];
  const x = (value: number | null, open: number) =>
    Math.min(
      chart.right,
      Math.max(chart.left, value === null || !(axes.x(value) > -Infinity) ? open : axes.x(value)),
    );
  const through = (at: (point: (typeof fit)[number]) => number, points = fit) =>
    points.map((point) => path`${at(point)} ${axes.y(point.sizeMm)}`).join('L');
  const low = through((point) => x(point.interval[0], chart.left));
  const high = through((point) => x(point.interval[1], chart.right), fit.toReversed());
  const middle = through((point) => x(point.median, chart.left));
  const top = fit.at(-1)!;
  return [
    { layer: 'trend', role: 'trend-band', shape: { kind: 'path', d: `M${low}L${high}Z` } },
    { layer: 'trend', role: 'trend-line', shape: { kind: 'path', d: `M${middle}` } },
    ...(letter === ''
      ? []
      : [
          {
            layer: 'trend',
            role: 'series-letter',
            shape: text(
              x(top.median, chart.left),
              axes.y(top.sizeMm) - 8,
              fontSize * 1.1,
              letter,
              'middle',
              'strong',
            ),
          },
        ]),
  ];
}

/** Hairlines between the two lengths of one animal, where both are measured. */
function joins([first, second]: SizeChart['series'], axes: Axes): Mark[] {
  if (!first || !second) return [];
  const others = new Map(second.points.map((point) => [point.taxon, point]));
  return first.points.flatMap(({ taxon, sizeMm, estimate }): Mark[] => {
    const other = others.get(taxon)?.estimate;
    if (estimate === null || other === null || other === undefined) return [];
    const shape = line(axes.x(estimate), axes.y(sizeMm), axes.x(other), axes.y(sizeMm));
    return [{ layer: 'marks', role: 'series-join', datum: taxon, shape }];
  });
}

function pointMarks(point: CompiledSize['trait']['points'][number], axes: Axes): Mark[] {
  const y = axes.y(point.sizeMm);
  const mark = (role: string, shape: Mark['shape']): Mark => ({
    layer: 'marks',
    role,
    datum: point.taxon,
    shape,
  });
  if (point.estimate !== null) {
    const x = axes.x(point.estimate);
    const [left, right] = point.interval.map((end) => (end === null ? x : axes.x(end))) as [number, number];
    return [
      mark('whisker', { kind: 'path', d: path`M${left} ${y}H${right}` }),
      ...glyph('measured', x, y, markScale).map(({ role, shape }) => mark(role, shape)),
    ];
  }
  const toward = point.atLeast === undefined ? -1 : 1;
  const x = axes.x((point.atLeast ?? point.atMost)!);
  return [
    mark('limit-wall', { kind: 'path', d: path`M${x} ${y - 6}V${y + 6}` }),
    mark('arrow', { kind: 'path', d: path`M${x + toward * 4} ${y}H${x + toward * 26}` }),
    ...glyph('bounded', x, y, markScale, toward).map(({ role, shape }) => mark(role, shape)),
  ];
}
