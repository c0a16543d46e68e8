import type { Report } from '../findings/report.ts';
import type { Specimen } from '../schema/index.ts';
import type { Located } from '../source/yaml-source.ts';
import { castOf } from './record-ids.ts';

/** A cast is of an original, not of another cast, and both are one animal: of one taxon and from one bed. */
export function checkCasts(specimens: readonly Located<Specimen>[], report: Report): void {
  const byId = new Map(specimens.map((specimen) => [specimen.value.id, specimen.value]));
  for (const cast of specimens) {
    const original = byId.get(castOf(cast.value) ?? '');
    if (!original) continue;
    if (castOf(original) !== undefined) refuseChain(cast, original, report);
    else checkAlike(cast, original, report);
  }
}

function refuseChain(cast: Located<Specimen>, original: Specimen, report: Report): void {
  const itself = original.id === cast.value.id;
  report.add(
    'cast-alone',
    cast.at(['preparations']),
    itself ? 'this is a cast of itself' : `"${original.id}" is itself a cast`,
    itself ? 'name the original' : `name the original of both: "${original.preparations}"`,
  );
}

function checkAlike({ value, at }: Located<Specimen>, original: Specimen, report: Report): void {
  if (original.taxon !== value.taxon)
    report.add(
      'counted-twice',
      at(['taxon']),
      `a cast of "${original.id}", which is "${original.taxon}": one animal would count in two taxa`,
      'give cast and original the same taxon',
    );
  // The wrong original is one mistake, not also a wrong bed.
  else if (
    value.horizon !== undefined &&
    original.horizon !== undefined &&
    value.horizon !== original.horizon
  )
    report.add(
      'counted-twice',
      at(['horizon']),
      `a cast of "${original.id}", which is from "${original.horizon}": one animal would lie in two beds`,
      'leave the horizon off the cast, or correct one of the two',
    );
}
