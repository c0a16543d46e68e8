import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';

/** Landmarks of a pair name each other, and one is left, the other right: else nobody can tell a swapped pair. */
export function checkPairs({ scheme }: LineageRecords, report: Report): void {
  if (!scheme) return;
  const byId = new Map(scheme.value.landmarks.map((landmark) => [landmark.id, landmark]));
  scheme.value.landmarks.forEach(({ id, pair, side }, index) => {
    const other = pair === undefined ? undefined : byId.get(pair);
    if (!other) return;
    const path = ['landmarks', index, 'pair'];
    if (other.pair !== id)
      report.add(
        'pair-broken',
        scheme.at(path),
        `"${id}" is paired with "${other.id}", which ${other.pair === undefined ? 'names no pair' : `is paired with "${other.pair}"`}`,
        `write pair: ${id} at "${other.id}", or remove the pair here`,
      );
    else if (!(side === 'left' && other.side === 'right') && !(side === 'right' && other.side === 'left')) {
      // Both ends see the same mistake: it is told at the first.
      if (scheme.value.landmarks.indexOf(other) < index) return;
      report.add(
        'pair-broken',
        scheme.at(path),
        `the pair of "${id}" and "${other.id}" is not one left and one right`,
        'write side: left at one and side: right at the other',
      );
    }
  });
}
