import { findTraitKind } from '../analyse/trait-kind.ts';
import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import { quantityWords } from '../resolve/authored-readings.ts';
import { quantityOf } from '../resolve/measured.ts';
import { indexScheme, type SchemeIndex } from '../resolve/scheme-index.ts';
import type { Quantity } from '../resolve/units.ts';
import type { Trait } from '../schema/index.ts';
import type { Located } from '../source/yaml-source.ts';

/**
 * Every trait is exactly one of ratio, length, angle, count and size, of measurements that can be that, and admits young
 * or doubtful specimens with a reason.
 */
export function checkTraits(records: LineageRecords, report: Report): void {
  const scheme = indexScheme(records.scheme?.value);
  for (const trait of records.traits.records) {
    if (findTraitKind(trait.value)) checkQuantities(trait, scheme, report);
    else
      report.add(
        'trait-kind',
        trait.at(['id']),
        `"${trait.value.id}" is not one kind of trait`,
        'give exactly one of ratio, length, angle, count, or size with a list',
      );
    checkAdmits(trait, report);
  }
}

/** Measurements of a trait with where they stand and what they have to be. */
function partsOf({
  ratio,
  length,
  angle,
  count,
  size,
}: Trait): [string | undefined, PropertyKey[], Quantity][] {
  const sizes = typeof size === 'string' ? [size] : (size ?? []);
  return [
    [ratio?.part, ['ratio', 'part'], 'length'],
    [ratio?.whole, ['ratio', 'whole'], 'length'],
    [length, ['length'], 'length'],
    [angle, ['angle'], 'angle'],
    [count, ['count'], 'count'],
    ...sizes.map((id, index): [string, PropertyKey[], Quantity] => [
      id,
      typeof size === 'string' ? ['size'] : ['size', index],
      'length',
    ]),
  ];
}

function checkQuantities(trait: Located<Trait>, { measurements }: SchemeIndex, report: Report): void {
  for (const [id, path, wanted] of partsOf(trait.value)) {
    const measurement = id === undefined ? undefined : measurements.get(id);
    if (!measurement || quantityOf(measurement) === wanted) continue;
    report.add(
      'trait-kind',
      trait.at(path),
      `"${id}" is ${quantityWords[quantityOf(measurement)]}, where ${quantityWords[wanted]} is meant`,
      `name a measurement that is ${quantityWords[wanted]}, or make this another kind of trait`,
    );
  }
  const { ratio } = trait.value;
  if (ratio && ratio.part === ratio.whole)
    report.add(
      'trait-kind',
      trait.at(['ratio', 'whole']),
      `the part and the whole are both "${ratio.part}": the ratio is always the same`,
      'name two measurements',
    );
}

function checkAdmits({ value, at }: Located<Trait>, report: Report): void {
  if (value.admits) return;
  if (value.adults === 'all')
    report.add(
      'admitted-without-reason',
      at(['adults']),
      `"${value.id}" counts young specimens without a reason`,
      'say why under admits, or write adults: only',
    );
  if (value.uncertain === 'include')
    report.add(
      'admitted-without-reason',
      at(['uncertain']),
      `"${value.id}" counts doubtful specimens without a reason`,
      'say why under admits, or write uncertain: exclude',
    );
}
