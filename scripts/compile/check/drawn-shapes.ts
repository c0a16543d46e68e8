import {
  isOnOneLine,
  superimpose,
  templateShape,
  type DrawingTemplate,
  type PlanePoint,
} from '../../../analysis/geometry/index.ts';
import type { Report } from '../findings/report.ts';
import type { Digitising } from '../resolve/digitising.ts';
import type { ResolvedLineage } from '../resolve/lineage.ts';
import { sideNames } from '../resolve/side-names.ts';
import type { ResolvedSpecimen } from '../resolve/specimens.ts';

/** A mirror image that leaves less than this share of the squares is no accident of form. */
const mirrorShare = 0.5;

/** Landmarks of a digitising that its template has, in the order of the template, on both. */
interface Shared {
  readonly specimen: ResolvedSpecimen;
  readonly digitising: Digitising;
  readonly own: PlanePoint[];
  readonly drawn: PlanePoint[];
}

/**
 * What a template is to be hung on can carry it: each animal has a specimen with three landmarks of the template that are not
 * all on one line, and no specimen was digitised the wrong way round.
 */
export function checkDrawnShapes(
  lineage: ResolvedLineage,
  templates: readonly DrawingTemplate[],
  report: Report,
): void {
  const byTaxon = new Map<string, Shared[]>();
  for (const specimen of lineage.specimens)
    for (const shared of sharedOf(specimen, lineage, templates)) {
      const { taxon } = specimen.record.value;
      byTaxon.set(taxon, [...(byTaxon.get(taxon) ?? []), shared]);
      checkMirrored(shared, report);
    }
  for (const all of byTaxon.values()) checkCarrying(all, report);
}

function sharedOf(
  specimen: ResolvedSpecimen,
  { scheme }: ResolvedLineage,
  templates: readonly DrawingTemplate[],
): Shared[] {
  return specimen.digitisings.flatMap((digitising): Shared[] => {
    const name = scheme.views.get(digitising.source.view)?.template;
    const template = templates.find(({ id }) => id === name);
    const [repeat] = digitising.repeats;
    if (!template || !repeat || digitising.dimensions !== 2) return [];
    const nameOf = sideNames(digitising, scheme);
    const pairs = [...templateShape(template)].flatMap(([id, place]) => {
      // Both ways alike: a pair changes names, and changes them back.
      const [x, y] = repeat.get(nameOf(id))?.at ?? [];
      return x === undefined || y === undefined ? [] : [{ own: [x, y] as const, place }];
    });
    return [
      {
        specimen,
        digitising,
        own: pairs.map(({ own }) => own),
        drawn: pairs.map(({ place }) => place),
      },
    ];
  });
}

/** One warning an animal, at the specimen with the most landmarks, where none of its specimens can carry the template. */
function checkCarrying(all: readonly Shared[], report: Report): void {
  if (all.some(({ own }) => !isOnOneLine(own))) return;
  const fullest = all.reduce((most, each) => (each.own.length > most.own.length ? each : most));
  const { record } = fullest.specimen;
  const where = record.at(fullest.digitising.path);
  const { id, taxon } = record.value;
  const count = fullest.own.length;
  if (count < 3)
    report.add(
      'drawing-few',
      where,
      `"${taxon}" cannot be drawn: ${id} has ${count} of the template’s landmarks, and a shape needs three`,
      'digitise more landmarks, or leave it: its values stand without a drawing',
    );
  else
    report.add(
      'drawing-line',
      where,
      `"${taxon}" cannot be drawn: the ${count} landmarks of ${id} lie all on one line`,
      'digitise landmarks above or below the line, or leave it: its values stand without a drawing',
    );
}

function checkMirrored({ specimen, digitising, own, drawn }: Shared, report: Report): void {
  // Three landmarks fit their mirror image too easily.
  if (own.length < 4 || isOnOneLine(own) || isOnOneLine(drawn)) return;
  const straight = superimpose(own, drawn);
  if (!straight.fitsBetterMirrored) return;
  const over = superimpose(own, drawn, { scaling: true, reflection: 'allow' });
  if (!(over.squares < mirrorShare * straight.squares)) return;
  report.add(
    'drawing-mirrored',
    specimen.record.at(digitising.path),
    `the landmarks of ${specimen.record.value.id} fit its template only when they are turned over`,
    'digitise the side that the view names, or turn the picture over first and write mirrored: true',
  );
}
