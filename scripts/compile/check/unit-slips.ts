import type { Report } from '../findings/report.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import { quantityOf } from '../resolve/measured.ts';
import type { Span } from '../source/source-text.ts';

/** More than five times too large or too small is no animal of this size: a unit was mistaken. */
const slip = Math.log(5);
/** Fewer specimens than this say nothing about what is usual. */
const fewest = 5;

/** One length of one specimen, on log scale. */
interface LogLength {
  specimen: string;
  taxon: string;
  measurement: string;
  log: number;
  span: Span;
}

/**
 * Finds lengths that are more than five times off: from the median of their taxon's other specimens, or, where a taxon
 * has fewer than two others, from what the specimen's other lengths predict (a size regression of slope one on logs).
 */
export function checkUnitSlips(lineage: ResolvedLineage, report: Report): void {
  const lengths = collect(lineage);
  const usual = new Map(
    [...Map.groupBy(lengths, ({ measurement }) => measurement)].map(([id, group]) => [
      id,
      group.length >= fewest ? median(group.map(({ log }) => log)) : undefined,
    ]),
  );
  const ofTaxon = Map.groupBy(lengths, ({ taxon, measurement }) => `${taxon} ${measurement}`);
  const ofSpecimen = Map.groupBy(lengths, ({ specimen }) => specimen);
  for (const length of lengths) {
    const others = ofTaxon.get(`${length.taxon} ${length.measurement}`)!;
    const off =
      others.length >= 3
        ? length.log - median(others.filter((other) => other !== length).map(({ log }) => log))
        : offSize(length, ofSpecimen.get(length.specimen)!, usual);
    if (off === undefined || Math.abs(off) <= slip) continue;
    const against =
      others.length >= 3 ? `other specimens of "${length.taxon}"` : 'the other lengths of this specimen';
    report.add(
      'unit-slip',
      length.span,
      `"${length.measurement}" is ${times(off)} than ${against} suggest`,
      advice(off),
    );
  }
}

function collect({ specimens, scheme }: ResolvedLineage): LogLength[] {
  return specimens.flatMap(({ record, readings }) =>
    [...readings].flatMap(([measurement, own]) => {
      const definition = scheme.measurements.get(measurement)!;
      if (quantityOf(definition) !== 'length') return [];
      return own.flatMap(({ values, span, toBreak }) => {
        const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
        return mean > 0 && toBreak === undefined
          ? [{ specimen: record.value.id, taxon: record.value.taxon, measurement, log: Math.log(mean), span }]
          : [];
      });
    }),
  );
}

/** How far a length is off what its specimen's size predicts; of two lengths that contradict each other the odder one is meant. */
function offSize(
  length: LogLength,
  siblings: readonly LogLength[],
  usual: ReadonlyMap<string, number | undefined>,
): number | undefined {
  const deviations = siblings.flatMap((sibling) => {
    const typical = usual.get(sibling.measurement);
    return typical === undefined ? [] : [{ sibling, by: sibling.log - typical }];
  });
  const own = deviations.find(({ sibling }) => sibling === length);
  const others = deviations.filter(({ sibling }) => sibling !== length);
  if (!own || others.length === 0) return undefined;
  const size = median(others.map(({ by }) => by));
  return others.length === 1 && Math.abs(own.by) < Math.abs(size) ? undefined : own.by - size;
}

function times(off: number): string {
  const factor = Math.exp(Math.abs(off));
  const rounded = factor < 10 ? factor.toFixed(1) : factor.toFixed(0);
  return `${rounded} times ${off > 0 ? 'larger' : 'smaller'}`;
}

function advice(off: number): string {
  const factor = Math.exp(Math.abs(off));
  if (Math.abs(off) > Math.log(18) && factor < 36)
    return `inches and millimetres differ by 25.4: check the unit and the number`;
  if (factor < 18) return 'centimetres and millimetres differ by 10: check the unit and the number';
  return factor < 300
    ? 'a misplaced decimal point gives a factor of 100: check the number'
    : 'metres and millimetres differ by 1000: check the unit and the number';
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
