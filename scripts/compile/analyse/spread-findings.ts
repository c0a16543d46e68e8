import { checkSpread, isOnScale } from '../../../analysis/traits/index.ts';
import type { Report } from '../findings/report.ts';
import type { Trait } from '../schema/index.ts';
import type { Located } from '../source/yaml-source.ts';
import { findReasonOut } from './eligibility.ts';
import { spreadGroups, type ObservedTrait } from './observe-trait.ts';

/** A spread as odd as this by chance alone comes once in a hundred traits. */
const surprising = 0.01;

/** Tells of values that the scale cannot hold, of a spread that is not known, and of one that is not the same in every taxon. */
export function warnOfSpread(observed: ObservedTrait, record: Located<Trait>, report: Report): void {
  const { trait, scale, spread } = observed;
  reportOutside(observed, report);
  const counted = [...observed.taxa.values()].map((taxon) => taxon.counted);
  const some = counted.some((values) => values.length > 0);
  if (some && !spread) {
    report.add(
      'spread-missing',
      record.at(['id']),
      `no taxon has two specimens for "${trait.id}", so nothing says how much animals of one kind differ`,
      'measure a second specimen of any taxon; until then intervals are missing, and inferred values are at best',
    );
    return;
  }
  const { grows, slope, unequal } = checkSpread(counted.flatMap((values) => spreadGroups(values, scale)));
  if (scale.kind === 'plain' && slope > 0 && grows < surprising) {
    report.add(
      'spread-unequal',
      record.at(['id']),
      `the spread of "${trait.id}" grows with its mean`,
      'consider scale: log, or say under why the plain scale is right',
    );
  } else if (unequal < surprising) {
    report.add(
      'spread-unequal',
      record.at(['id']),
      `the spread of "${trait.id}" is not the same in every taxon`,
      scale.kind === 'plain'
        ? 'look for a slip in the widest taxon; consider scale: log'
        : 'look for a slip in the widest taxon',
    );
  }
}

function reportOutside({ trait, scale, values }: ObservedTrait, report: Report): void {
  for (const { value, specimen } of values) {
    if (isOnScale(scale, value) || findReasonOut(specimen.record.value, trait)) continue;
    const room = scale.kind === 'logit' ? `more than 0 and less than ${scale.whole}` : 'more than 0';
    report.add(
      'scale-outside',
      specimen.record.at(['id']),
      `"${trait.id}" is ${Number(value.toPrecision(4))} in ${specimen.record.value.id}, and a ${scale.kind} scale needs ${room}`,
      'look for a slip, or choose another scale for the trait',
    );
  }
}
