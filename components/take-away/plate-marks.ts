import { layouts } from '../figures/scene/layout.ts';
import type { PlateData, PlateTaxon } from '../figures/scene/plate-data.ts';
import type { Scales } from '../figures/scene/scales.ts';
import { path } from '../figures/scene/scene.ts';
import { statusMarks } from '../figures/scene/status-marks.ts';
import { shapeToSvg } from '../figures/scene/svg.ts';
import type { PlateFrame, PlatePlace } from './plate-frames.ts';
import type { Recomputed } from './recompute.ts';

/**
 * The mark of an animal as relatives see it, in SVG, for one format of the plate; with a broken line to where its skulls really
 * stand, if it has any.
 */
export function marksFromRelatives(frame: PlateFrame, place: PlatePlace, each: Recomputed): string {
  const layout = layouts.find(({ name }) => name === frame.layout)!;
  const scales = scalesOf(frame);
  const taxon = plateTaxon(each, place);
  const marks = statusMarks({ ...emptyPlate, taxa: [taxon] }, layout, scales).flatMap(
    (placed) => placed.marks,
  );
  const drawn = marks.map(({ shape, role }) => shapeToSvg(shape, role)).join('');
  return drawn + missMarks(scales, place, each, layout.markScale);
}

function scalesOf({ zero, unit, today, perMa, reach }: PlateFrame): Scales {
  return {
    x: (value) => zero + unit * value,
    y: (ageMa) => today + perMa * ageMa,
    unit,
    reach,
    oldestMa: 0,
    valueTicks: [],
    ageTicks: [],
  };
}

function plateTaxon(each: Recomputed, [placedMa, firstMa, lastMa]: PlatePlace): PlateTaxon {
  return {
    id: each.taxon,
    name: '',
    living: false,
    outgroup: false,
    status: each.open ? 'unknown' : 'inferred',
    estimate: each.open ? null : each.median,
    interval: each.open ? [null, null] : each.interval,
    approximate: false,
    placedMa,
    firstMa,
    lastMa,
    oneBed: false,
  };
}

/** A tick where the skulls stand, and the miss: a line to it from the edge of the estimate's mark. */
function missMarks(
  scales: Scales,
  [placedMa, , , truth]: PlatePlace,
  each: Recomputed,
  scale: number,
): string {
  if (truth === null) return '';
  const [x, y, tick] = [scales.x(truth), scales.y(placedMa), 6 * scale];
  const truthTick = shapeToSvg({ kind: 'path', d: path`M${x} ${y - tick}V${y + tick}` }, 'miss-truth');
  const from = scales.x(each.median);
  if (each.open || Math.abs(x - from) <= 2 * tick) return truthTick;
  const line = path`M${from + Math.sign(x - from) * 1.6 * tick} ${y}H${x}`;
  return shapeToSvg({ kind: 'path', d: line }, 'miss-line') + truthTick;
}

const emptyPlate: Omit<PlateData, 'taxa'> = {
  branches: [],
  ruler: false,
  unit: '',
  values: [],
  oldestMa: 0,
  epochs: [],
  marks: [],
  label: '',
  meaning: '',
};
