import { layouts, type PlateLayout } from '../figures/scene/layout.ts';
import { plateData } from '../figures/scene/plate-data.ts';
import { plateScales } from '../figures/scene/scales.ts';
import type { LineageView } from '../lineage/view.ts';

/** The two scales of one plate as numbers: pixels are `zero` + `unit` × value and `today` + `perMa` × age. */
export interface PlateFrame {
  layout: PlateLayout['name'];
  zero: number;
  unit: number;
  today: number;
  perMa: number;
  /** Values that the chart reaches on either side. */
  reach: readonly [number, number];
}

/** Ages of an animal on the plate, Ma: its mark, first find, last find; and the measured value, null for none. */
export type PlatePlace = readonly [placedMa: number, firstMa: number, lastMa: number, truth: number | null];

/** Frames of all plates of a page, and the places of its animals. */
export function platesOf(view: LineageView): {
  plates: PlateFrame[];
  places: Record<string, PlatePlace>;
} {
  const data = plateData(view.lineage, view.trait, view.language);
  const plates = layouts.map((layout): PlateFrame => {
    const { x, y, unit, reach } = plateScales(data, layout);
    return { layout: layout.name, zero: x(0), unit, today: y(0), perMa: y(1) - y(0), reach };
  });
  const places = data.taxa
    .filter(({ status }) => status === 'measured' || status === 'inferred')
    .map((taxon): [string, PlatePlace] => {
      const truth = taxon.status === 'measured' ? taxon.estimate : null;
      return [taxon.id, [taxon.placedMa, taxon.firstMa, taxon.lastMa, truth]];
    });
  return { plates, places: Object.fromEntries(places) };
}
