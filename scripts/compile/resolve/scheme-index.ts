import type { Axis, Landmark, Measurement, Scheme } from '../schema/index.ts';

/** The scheme with its parts by id. */
export interface SchemeIndex {
  landmarks: Map<string, Landmark>;
  axes: Map<string, Axis>;
  measurements: Map<string, Measurement>;
  views: Map<string, Scheme['views'][number]>;
  sheets: Map<string, Scheme['sheets'][number]>;
}

/** Indexes a scheme; a lineage without one has empty indexes. */
export function indexScheme(scheme: Scheme | undefined): SchemeIndex {
  return {
    landmarks: byId(scheme?.landmarks ?? []),
    axes: byId(scheme?.axes ?? []),
    measurements: byId(scheme?.measurements ?? []),
    views: byId(scheme?.views ?? []),
    sheets: new Map((scheme?.sheets ?? []).map((sheet) => [sheet.file, sheet])),
  };
}

/** Records by their id; of two with one id the first stands. */
export function byId<T extends { id: string }>(records: readonly T[]): Map<string, T> {
  const map = new Map<string, T>();
  for (const record of records) if (!map.has(record.id)) map.set(record.id, record);
  return map;
}

/** Landmarks that a measurement is defined by, in order; none when it is taken by callipers only. */
export function landmarksOf(measurement: Measurement): string[] {
  if (measurement.angle) return [...measurement.angle];
  if (measurement.from === undefined || measurement.to === undefined) return [];
  return [measurement.from, ...(measurement.through ?? []), measurement.to];
}

/** True where some view shows every landmark of a measurement; a landmark without views is in all of them. */
export function shareView(measurement: Measurement, landmarks: ReadonlyMap<string, Landmark>): boolean {
  const views = landmarksOf(measurement).flatMap((id) => landmarks.get(id)?.views ?? []);
  const limited = landmarksOf(measurement).filter((id) => landmarks.get(id)?.views);
  return (
    limited.length === 0 ||
    views.some((view) => limited.every((id) => landmarks.get(id)!.views!.includes(view)))
  );
}
