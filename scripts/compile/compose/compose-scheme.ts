import type { AnalysedLineage } from '../analyse/lineage.ts';
import { timesOf } from '../analyse/trait-kind.ts';
import type { CompiledScheme } from '../contract.ts';
import { landmarksOf } from '../resolve/scheme-index.ts';

/** What is measured by landmarks, as a measuring page needs it: what only callipers give is left out. */
export function composeScheme({ lineage: { scheme }, traits }: AnalysedLineage): CompiledScheme {
  const measurements = [...scheme.measurements.values()].filter((each) => landmarksOf(each).length > 0);
  const known = new Set(measurements.map(({ id }) => id));
  return withoutGaps({
    views: [...scheme.views.values()].map(({ id, name, dimensions }) => ({ id, name, dimensions })),
    landmarks: [...scheme.landmarks.values()].map(({ id, name, definition, views }) => ({
      id,
      name,
      definition,
      views,
    })),
    measurements: measurements.map(({ id, name, from, to, along, through, angle }) =>
      angle ? { id, name, angle } : { id, name, from, to, along, through },
    ),
    axes: [...scheme.axes.values()].map(({ id, name, from, to, else: others }) => ({
      id,
      name,
      from,
      to,
      else: others,
    })),
    traits: traits
      .map(({ observed: { trait, kind } }) => ({
        trait: trait.id,
        measurements: [...kind.measurements],
        times: timesOf(trait),
      }))
      .filter((each) => each.measurements.every((id) => known.has(id))),
  });
}

/** A copy of plain data without the fields that are undefined. */
function withoutGaps(scheme: unknown): CompiledScheme {
  return JSON.parse(JSON.stringify(scheme)) as CompiledScheme; // the shape it came in, less what is absent
}
