import { landmarksOf, type SchemeIndex } from '../resolve/scheme-index.ts';
import type { Measurement, Specimen } from '../schema/index.ts';

/** Landmarks of a specimen that may not be used: lost, on excluded filler, or in excluded distortion. */
export function excludedLandmarks(specimen: Specimen): Set<string> {
  const excluded = new Set(specimen.lost.map(({ landmark }) => landmark));
  for (const filler of specimen.filler) {
    if (typeof filler === 'string') excluded.add(filler);
    else if (filler.treatment === 'excluded') excluded.add(filler.landmark);
  }
  for (const { affects, treatment } of specimen.distortion) {
    if (treatment === 'excluded') affects.forEach((landmark) => excluded.add(landmark));
  }
  return excluded;
}

/** The author's plus or minus (95%, mm) on a measurement whose points lie on filler or in distortion that is taken; 0 where none do. */
export function plusMinusOf(measurement: Measurement, specimen: Specimen, scheme: SchemeIndex): number {
  const axis = measurement.along === undefined ? undefined : scheme.axes.get(measurement.along);
  const used = new Set([...landmarksOf(measurement), ...(axis ? [axis.from, axis.to] : [])]);
  let squares = 0;
  for (const filler of specimen.filler) {
    if (typeof filler !== 'string' && filler.treatment === 'taken-as-found' && used.has(filler.landmark))
      squares += (filler.error ?? 0) ** 2;
  }
  for (const { affects, treatment, error } of specimen.distortion) {
    if (treatment !== 'excluded' && error !== undefined && affects.some((landmark) => used.has(landmark)))
      squares += error ** 2;
  }
  return Math.sqrt(squares);
}
