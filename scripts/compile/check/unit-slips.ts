import { median } from '../../../analysis/statistics/index.ts';
import type { Report } from '../findings/report.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import { logLengths, type LogLength } from './log-lengths.ts';
import { SizeLines } from './size-lines.ts';

/** More than five times too large or too small is no animal of this size: a unit was mistaken. */
const slip = Math.log(5);

/**
 * Finds lengths that are more than five times off: from the median of their taxon's other specimens, or, where a taxon
 * has fewer than two others, from what the specimen's size or its other lengths predict. A picture whose scale is off is
 * told once, at its scale.
 */
export function checkUnitSlips(lineage: ResolvedLineage, report: Report): void {
  for (const { length, off, against } of withoutEchoes(findSlips(lineage))) {
    const from = length.sheet === undefined ? '' : ' from landmarks';
    report.add(
      'unit-slip',
      length.span,
      `"${length.measurement}"${from} is ${times(off)} than ${against}`,
      length.sheet === undefined ? advice(off) : 'check the scale of the picture, and the unit of the sheet',
    );
  }
}

/** A length that is off, by how much on log scale, and against what. */
interface Slip {
  length: LogLength;
  off: number;
  against: string;
  /** What else the same mistake would make look wrong: the picture, or the specimen whose lengths contradict each other. */
  cause: string | undefined;
}

function findSlips(lineage: ResolvedLineage): Slip[] {
  const lengths = logLengths(lineage);
  const read = lengths.filter(({ sheet }) => sheet === undefined);
  const lines = new SizeLines(read, sizeMeasurement(lineage));
  const ofTaxon = Map.groupBy(lengths, ({ taxon, measurement }) => `${taxon} ${measurement}`);
  const ofSpecimen = Map.groupBy(read, ({ specimen }) => specimen);
  const middleOf = middles();
  return lengths.flatMap((length) => {
    const group = ofTaxon.get(`${length.taxon} ${length.measurement}`)!;
    const found = againstTaxon(length, group, middleOf) ?? againstSize(length, lines, ofSpecimen);
    return found && Math.abs(found.off) > slip ? [found] : [];
  });
}

/** Of several that one mistake explains the one that is furthest off is told. */
function withoutEchoes(slips: readonly Slip[]): Slip[] {
  const worst = new Map<string, Slip>();
  for (const each of slips) {
    const before = each.cause === undefined ? undefined : worst.get(each.cause);
    if (each.cause !== undefined && !(before && Math.abs(before.off) >= Math.abs(each.off)))
      worst.set(each.cause, each);
  }
  return slips.filter((each) => each.cause === undefined || worst.get(each.cause) === each);
}

/** The measurement that traits name as what size means: the first that is named. */
function sizeMeasurement({ records }: ResolvedLineage): string | undefined {
  return records.traits.records.map(({ value }) => value.size).find((size) => typeof size === 'string');
}

/** In a group so large one member more or less does not move the middle. */
const large = 50;

/** Median of a group without one specimen; of a large group that of all, worked out once. */
function middles(): (group: readonly LogLength[], without: string) => number {
  const known = new Map<readonly LogLength[], number>();
  return (group, without) => {
    if (group.length <= large)
      return median(group.filter(({ specimen }) => specimen !== without).map(({ log }) => log));
    const middle = known.get(group) ?? median(group.map(({ log }) => log));
    known.set(group, middle);
    return middle;
  };
}

function againstTaxon(
  length: LogLength,
  group: readonly LogLength[],
  middleOf: ReturnType<typeof middles>,
): Slip | undefined {
  const specimens = new Set(group.slice(0, large).map(({ specimen }) => specimen));
  if (specimens.size < 3) return undefined;
  return {
    length,
    off: length.log - middleOf(group, length.specimen),
    against: `other specimens of "${length.taxon}" suggest`,
    cause: length.sheet === undefined ? undefined : `${length.specimen} ${length.sheet}`,
  };
}

function againstSize(
  length: LogLength,
  lines: SizeLines,
  ofSpecimen: ReadonlyMap<string, readonly LogLength[]>,
): Slip | undefined {
  // The scale of a picture makes every length of it wrong alike, so that they do not contradict each other.
  if (length.sheet !== undefined) return undefined;
  const answer = lines.offOf(length, ofSpecimen.get(length.specimen)!);
  if (!answer) return undefined;
  return answer.by === undefined
    ? {
        length,
        off: answer.off,
        against: 'the other lengths of this specimen suggest',
        cause: length.specimen,
      }
    : { length, off: answer.off, against: `its "${answer.by}" suggests`, cause: undefined };
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
