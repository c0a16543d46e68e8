import { findTraitKind } from '../analyse/trait-kind.ts';
import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';

/** Every trait is exactly one of ratio, length, angle, count and size, and admits young or doubtful specimens with a reason. */
export function checkTraits(records: LineageRecords, report: Report): void {
  for (const trait of records.traits.records) {
    const { value } = trait;
    if (!findTraitKind(value)) {
      report.add(
        'trait-kind',
        trait.at(['id']),
        `"${value.id}" is not one kind of trait`,
        'give exactly one of ratio, length, angle, count, or size with a list',
      );
    }
    if (value.admits) continue;
    if (value.adults === 'all')
      report.add(
        'admitted-without-reason',
        trait.at(['adults']),
        `"${value.id}" counts young specimens without a reason`,
        'say why under admits, or write adults: only',
      );
    if (value.uncertain === 'include')
      report.add(
        'admitted-without-reason',
        trait.at(['uncertain']),
        `"${value.id}" counts doubtful specimens without a reason`,
        'say why under admits, or write uncertain: exclude',
      );
  }
}
