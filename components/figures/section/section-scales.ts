import { scaleLinear } from 'd3';
import type { SectionFigure } from './section-data.ts';
import type { SectionLayout } from './section-layout.ts';

/** The two axes of a section: values across, metres upward as in a field log. */
export interface SectionScales {
  x(valueMm: number): number;
  y(heightM: number): number;
  /** Pixels for one mm of the trait. */
  perMm: number;
  valueTicks: number[];
  heightTicks: number[];
  /** Ages on a straight line between dated beds, each with its height. */
  ageTicks: { ageMa: number; heightM: number }[];
}

/** Scales for a layout. The axis of values begins at 0, where the tooth on the ruler has the base of its crown. */
export function sectionScales(figure: SectionFigure, layout: SectionLayout): SectionScales {
  const { chart, zero } = layout;
  const tickCount = chart.right - zero > 200 ? 8 : 4;
  const x = scaleLinear([0, figure.endMm], [zero, chart.right]).nice(tickCount);
  const room = (figure.topM - figure.baseM || 1) * 0.02;
  const y = scaleLinear([figure.baseM - room, figure.topM + room], [chart.bottom, chart.top]);
  return {
    x: (value) => x(value),
    y: (height) => y(height),
    perMm: x(1) - x(0),
    valueTicks: x.ticks(tickCount),
    heightTicks: y.ticks(chart.bottom - chart.top > 300 ? 6 : 4),
    ageTicks: ageTicks(figure),
  };
}

function ageTicks({ beds }: SectionFigure): SectionScales['ageTicks'] {
  const [lowest, highest] = [beds[0], beds.at(-1)];
  if (!lowest || !highest || lowest === highest) return [];
  const heightOf = scaleLinear(
    beds.map(({ ageMa }) => ageMa),
    beds.map(({ heightM }) => heightM),
  );
  return scaleLinear([highest.ageMa, lowest.ageMa], [0, 1])
    .ticks(5)
    .map((ageMa) => ({ ageMa, heightM: heightOf(ageMa) }));
}
