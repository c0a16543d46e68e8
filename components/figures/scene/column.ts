import type { ChartUnit, PlateData } from './plate-data.ts';
import type { PlateLayout } from './layout.ts';
import type { Scales } from './scales.ts';
import { line, text, textWidth, type Mark } from './scene.ts';

/** The geological column with a line between units and a name in each, and the age grid with its ticks. */
export function column(data: PlateData, layout: PlateLayout, scales: Scales): Mark[] {
  return [...grid(layout, scales), ...units(data.epochs, layout, scales), ...ticks(layout, scales)];
}

function units(epochs: readonly ChartUnit[], layout: PlateLayout, scales: Scales): Mark[] {
  const { left, width, turned } = layout.column;
  const size = layout.fontSize * (turned ? 0.94 : 0.96);
  const height = (unit: ChartUnit) =>
    scales.y(Math.min(unit.from, scales.oldestMa)) - scales.y(Math.max(0, unit.to));
  const fits = (unit: ChartUnit) =>
    fittingName(unit.name, turned ? height(unit) : width, turned ? width : height(unit), size);
  return readableUnits(epochs, (unit) => fits(unit) !== undefined).flatMap((epoch, index): Mark[] => {
    const top = scales.y(Math.max(0, epoch.to));
    const bottom = scales.y(Math.min(epoch.from, scales.oldestMa));
    if (bottom <= top) return [];
    const band: Mark = {
      layer: 'column',
      role: index % 2 === 0 ? 'unit unit-even' : 'unit unit-odd',
      shape: { kind: 'rect', x: left, y: top, width, height: bottom - top },
    };
    const name = fits(epoch);
    if (!name) return [band];
    const label = text(
      left + width / 2,
      (top + bottom) / 2 + (turned ? 0 : size * 0.34),
      size,
      name,
      'middle',
    );
    return [
      band,
      {
        layer: 'column',
        role: 'unit-name',
        shape: turned ? ({ ...label, turned: true } as typeof label) : label,
      },
    ];
  });
}

/**
 * Epochs, except that a period none of whose epochs has room for its name stands as one unit under the period's own name:
 * the last two and a half million years read 'Quaternary'.
 */
function readableUnits(epochs: readonly ChartUnit[], fits: (unit: ChartUnit) => boolean): ChartUnit[] {
  const byPeriod = Map.groupBy(epochs, (epoch) => epoch.period?.name);
  return [...byPeriod].flatMap(([, members]) => {
    const period = members[0]!.period;
    return period && members.length > 1 && !members.some(fits) ? [period] : members;
  });
}

/** The name, or nothing where there is no room to write it at a readable size. */
function fittingName(name: string, along: number, across: number, size: number): string | undefined {
  return across >= size * 1.05 && along >= textWidth(name, size) ? name : undefined;
}

function grid(layout: PlateLayout, scales: Scales): Mark[] {
  const { chart } = layout;
  const start = layout.column.left + layout.column.width;
  const ages = scales.ageTicks.map((age): Mark => ({
    layer: 'grid',
    role: 'age-line',
    shape: line(start, scales.y(age), chart.right, scales.y(age)),
  }));
  const values = scales.valueTicks.map((value): Mark => ({
    layer: 'grid',
    role: value === 0 || value === 100 ? 'value-line value-end' : 'value-line',
    shape: line(scales.x(value), chart.top, scales.x(value), chart.bottom),
  }));
  return [...values, ...ages];
}

function ticks(layout: PlateLayout, scales: Scales): Mark[] {
  const x = layout.chart.left - layout.fontSize * 0.4;
  const size = layout.fontSize;
  const unit: Mark = {
    layer: 'column',
    role: 'age-unit',
    shape: text(x, scales.y(0) - size, size * 0.9, 'Ma', 'end'),
  };
  return [
    unit,
    ...scales.ageTicks.map((age): Mark => ({
      layer: 'column',
      role: 'age-tick',
      shape: text(x, scales.y(age) + size * 0.34, size, String(age), 'end'),
    })),
  ];
}
