import { taxonAges } from '../analyse/taxon-ages.ts';
import type { Report } from '../findings/report.ts';
import { ageText } from '../resolve/ages.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import { itemPath } from '../source/yaml-source.ts';

/** Superposition must not contradict the ages of beds, and finds must lie in the range that is given for their taxon. */
export function checkAges(lineage: ResolvedLineage, report: Report): void {
  checkSuperposition(lineage, report);
  checkSuperpositionRings(lineage, report);
  checkFinds(lineage, report);
  checkDated(lineage, report);
}

function checkSuperposition({ records, horizonAges }: ResolvedLineage, report: Report): void {
  for (const horizon of records.horizons.records) {
    const upper = horizonAges.get(horizon.value.id);
    horizon.value.above?.forEach((id, index) => {
      const lower = horizonAges.get(id);
      // Older than the bed below at its youngest: no pair of true ages could be in this order.
      if (!upper || !lower || upper.to < lower.from) return;
      const problem = `"${horizon.value.id}" (${ageText(upper)} Ma) lies above "${id}" (${ageText(lower)} Ma), which is not older`;
      report.add(
        'superposition',
        horizon.at(itemPath(horizon, 'above', index)),
        problem,
        'correct one of the two ages, or the order of the beds',
      );
    });
  }
}

function checkSuperpositionRings({ records }: ResolvedLineage, report: Report): void {
  const below = new Map(records.horizons.records.map(({ value }) => [value.id, value.above ?? []]));
  for (const horizon of records.horizons.records) {
    const seen = new Set<string>();
    const waiting = [...(horizon.value.above ?? [])];
    while (waiting.length > 0) {
      const id = waiting.pop()!;
      if (seen.has(id)) continue;
      seen.add(id);
      waiting.push(...(below.get(id) ?? []));
    }
    if (!seen.has(horizon.value.id)) continue;
    report.add(
      'superposition',
      horizon.at(['above']),
      `"${horizon.value.id}" lies above itself, by way of ${[...seen].join(', ')}`,
      'correct the order of the beds',
    );
    return;
  }
}

function checkFinds({ specimens, givenAges, horizonAges }: ResolvedLineage, report: Report): void {
  for (const { record } of specimens) {
    const given = givenAges.get(record.value.taxon);
    const found = record.value.horizon === undefined ? undefined : horizonAges.get(record.value.horizon);
    if (!given || !found || (found.from >= given.to && found.to <= given.from)) continue;
    const problem = `this find is ${ageText(found)} Ma old, outside the ${ageText(given)} Ma given for "${record.value.taxon}"`;
    report.add(
      'find-outside-range',
      record.at(['horizon']),
      problem,
      'correct the horizon or the identification, or remove the age of the taxon: it is worked out from the finds',
    );
  }
}

/** Every taxon lived at some time; nothing is said where a record that might tell has failed its own check. */
function checkDated(lineage: ResolvedLineage, report: Report): void {
  const { taxa, specimens, horizons } = lineage.records;
  const failed = [taxa, specimens, horizons].some(
    (entries) => !entries.whole || entries.records.length < entries.declared.size,
  );
  const astray = lineage.specimens.some(
    ({ record: { value } }) =>
      !taxa.declared.has(value.taxon) ||
      (value.horizon !== undefined && !lineage.horizonAges.has(value.horizon)),
  );
  if (failed || astray) return;
  const ages = taxonAges(lineage);
  for (const taxon of taxa.records) {
    if (ages.get(taxon.value.id)?.age || taxon.value.age !== undefined) continue;
    // Without a dated bed its section has no ages, which is told there, and the page is made all the same.
    if (lineage.section?.record.value.taxon === taxon.value.id) continue;
    report.add(
      'age-missing',
      taxon.at(['id']),
      `nothing says when "${taxon.value.id}" lived`,
      'give its specimens a horizon, say living: true, or give an age with its source',
    );
  }
}
