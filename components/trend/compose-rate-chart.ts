import { scaleLog } from 'd3';
import { glyph } from '../figures/scene/glyphs.ts';
import { line, path, text, type Mark, type Scene } from '../figures/scene/scene.ts';
import { chartSize } from './compose-change-chart.ts';
import { logTicks } from './compose-size-chart.ts';

/** One rate on a chart, in darwins without direction, over a time in million years. */
export interface RatePoint {
  id: string;
  myr: number;
  darwins: number;
  standardError: number;
}

/** What a chart of rates shows: its points, and where one was fitted a line through their natural logs. */
export interface RateChart {
  points: readonly RatePoint[];
  line?: { slope: number; intercept: number };
}

/** More points than these would hide each other under their error bars. */
const mostBars = 24;

/** Words on a chart of rates; `guides` name slopes of 0, −½ and −1. */
export interface RateWords {
  across: string;
  up: string;
  guides: readonly [steady: string, wandering: string, still: string];
  /** A round number of an axis with no more decimals than it needs. */
  number: (value: number) => string;
}

const chart = { left: 56, right: chartSize.width - 100, top: 34, bottom: chartSize.height - 46 };
const fontSize = 13;

/** Half-width of a 95% interval in standard errors, the errors taken as known. */
const deviations = 1.959963984540054;

/**
 * Rate against the time it is measured over, both logarithmic (Gingerich 1993, American Journal of Science 293-A: 453–478;
 * the slopes of its guides from memory): steady change keeps its rate, wandering loses the root of the time, no net change
 * all of it. Undefined with fewer than two pairs that differ.
 */
export function composeRateChart({ points, line: fitted }: RateChart, words: RateWords): Scene | undefined {
  const differing = points.filter(({ darwins }) => darwins > 0);
  if (differing.length < 2) return undefined;
  const times = differing.map(({ myr }) => myr);
  const rates = differing.map(({ darwins }) => darwins);
  const x = scaleLog([Math.min(...times) / 1.3, Math.max(...times) * 1.3], [chart.left, chart.right]);
  const y = scaleLog([Math.min(...rates) / 1.8, Math.max(...rates) * 1.8], [chart.bottom, chart.top]);
  const axes = { x: (value: number) => x(value), y: (value: number) => y(value) };
  const crowded = differing.length > mostBars;
  return {
    ...chartSize,
    marks: [
      ...grid(axes, x.domain() as [number, number], y.domain() as [number, number], words),
      ...guides(axes, times, rates, words),
      ...(crowded ? [] : differing.map((point) => bar(point, axes))),
      ...differing.flatMap((point) => disc(point, axes, crowded ? 0.5 : 0.7)),
      ...(fitted ? [fittedLine(fitted, times, axes)] : []),
    ],
  };
}

interface Axes {
  x: (value: number) => number;
  y: (value: number) => number;
}

function grid(axes: Axes, times: [number, number], rates: [number, number], words: RateWords): Mark[] {
  const mark = (role: string, shape: Mark['shape']): Mark => ({ layer: 'grid', role, shape });
  const foot = chart.bottom + fontSize * 1.25;
  const decades = logTicks(rates).filter((tick) => /^1/.test(tick.toExponential()));
  const ticks = decades.length > 2 ? decades : logTicks(rates);
  return [
    mark('axis-word', text(4, fontSize * 1.25, fontSize, words.up)),
    ...ticks.flatMap((tick) => [
      mark('age-line', line(chart.left, axes.y(tick), chart.right, axes.y(tick))),
      mark(
        'value-tick',
        text(chart.left - 7, axes.y(tick) + fontSize * 0.34, fontSize, words.number(tick), 'end'),
      ),
    ]),
    ...logTicks(times).flatMap((tick) => [
      mark('value-line', line(axes.x(tick), chart.top, axes.x(tick), chart.bottom)),
      mark('value-tick', text(axes.x(tick), foot, fontSize, words.number(tick), 'middle')),
    ]),
    mark(
      'axis-word',
      text((chart.left + chart.right) / 2, foot + fontSize * 1.35, fontSize, words.across, 'middle'),
    ),
  ];
}

/** Three lines through the middle of the pairs, cut at the edges of the chart, each named at its right end. */
function guides(axes: Axes, times: readonly number[], rates: readonly number[], words: RateWords): Mark[] {
  const centre = (values: readonly number[]) =>
    Math.exp(values.reduce((sum, value) => sum + Math.log(value), 0) / values.length);
  const [time, rate] = [centre(times), centre(rates)];
  const ends = [Math.min(...times), Math.max(...times)];
  const inside = (height: number) => Math.min(chart.bottom, Math.max(chart.top, height));
  const lines = [0, -0.5, -1].map((slope) => ends.map((end) => inside(axes.y(rate * (end / time) ** slope))));
  const places = apart(lines.map(([, right]) => right!));
  return lines.flatMap(([left, right], index): Mark[] => [
    { layer: 'grid', role: 'rate-guide', shape: line(axes.x(ends[0]!), left!, axes.x(ends[1]!), right!) },
    {
      layer: 'grid',
      role: 'axis-word',
      shape: text(chart.right + 6, places[index]! + fontSize * 0.34, fontSize * 0.96, words.guides[index]!),
    },
  ]);
}

/** Heights of labels that were given from the top down, moved apart by a line where they would touch, about their middle. */
function apart(heights: readonly number[]): number[] {
  const leading = fontSize * 1.2;
  const pushed = [...heights];
  for (let index = 1; index < pushed.length; index++)
    pushed[index] = Math.max(pushed[index]!, pushed[index - 1]! + leading);
  const lift = (pushed.at(-1)! - heights.at(-1)!) / 2;
  return pushed.map((height) => height - lift);
}

function fittedLine(
  { slope, intercept }: NonNullable<RateChart['line']>,
  times: readonly number[],
  axes: Axes,
): Mark {
  const at = (time: number) => axes.y(Math.exp(intercept + slope * Math.log(time)));
  const [first, last] = [Math.min(...times), Math.max(...times)];
  const shape = line(axes.x(first), at(first), axes.x(last), at(last));
  return { layer: 'trend', role: 'rate-line', shape };
}

function disc({ id, myr, darwins }: RatePoint, axes: Axes, size: number): Mark[] {
  return glyph('measured', axes.x(myr), axes.y(darwins), size).map(({ role, shape }) => ({
    layer: 'marks',
    role,
    datum: id,
    shape,
  }));
}

function bar({ id, myr, darwins, standardError }: RatePoint, axes: Axes): Mark {
  const x = axes.x(myr);
  const top = Math.max(chart.top, axes.y(darwins + deviations * standardError));
  const low = darwins - deviations * standardError;
  const bottom = low > 0 ? Math.min(chart.bottom, axes.y(low)) : chart.bottom;
  const shape: Mark['shape'] = { kind: 'path', d: path`M${x} ${top}V${bottom}` };
  return { layer: 'marks', role: 'whisker', datum: id, shape };
}
