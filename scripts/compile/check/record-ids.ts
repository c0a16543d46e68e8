import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import type { Specimen } from '../schema/index.ts';
import { itemPath, type Located } from '../source/yaml-source.ts';
import { expectFile, expectId, type Kind } from './expect-id.ts';
import type { Known } from './known.ts';

/** Every id in lineage, horizons, taxa, specimens, traits and private records leads somewhere. */
export function checkRecordIds(records: LineageRecords, known: Known, report: Report): void {
  const check = (record: Located<unknown>) => (kind: Kind, id: string | undefined, path: PropertyKey[]) => {
    if (id !== undefined) expectId(kind, id, known[kind], record.at(path), report);
  };
  checkLineage(records, known, report);
  for (const record of [...records.horizons.records, ...records.taxa.records, ...records.specimens.records]) {
    record.value.sources?.forEach((key, index) => check(record)('reference', key, ['sources', index]));
  }
  for (const horizon of records.horizons.records) {
    horizon.value.above?.forEach((id, index) =>
      check(horizon)('horizon', id, itemPath(horizon, 'above', index)),
    );
  }
  for (const specimen of records.specimens.records)
    checkSpecimen(specimen, records, known, check(specimen), report);
  checkTraits(records, check);
  for (const record of records.private.records) {
    check(record)('specimen', record.value.specimen, ['specimen']);
    check(record)('horizon', record.value.horizon, ['horizon']);
  }
}

type Refer = (kind: Kind, id: string | undefined, path: PropertyKey[]) => void;

function checkLineage({ lineage, folder }: LineageRecords, known: Known, report: Report): void {
  if (!lineage) return;
  expectId('trait', lineage.value.focus, known.trait, lineage.at(['focus']), report);
  lineage.value.trees.forEach((tree, index) => {
    if (tree.source !== undefined)
      expectId('reference', tree.source, known.reference, lineage.at(['trees', index, 'source']), report);
    if (tree.file !== undefined)
      expectFile(tree.file, folder.files, lineage.at(['trees', index, 'file']), report);
  });
}

function checkSpecimen(
  specimen: Located<Specimen>,
  records: LineageRecords,
  known: Known,
  refer: Refer,
  report: Report,
): void {
  const { value } = specimen;
  refer('taxon', value.taxon, ['taxon']);
  refer('horizon', value.horizon, ['horizon']);
  const cast = castOf(value);
  if (cast !== undefined && !known.specimen.has(cast)) {
    report.add(
      'cast-alone',
      specimen.at(['preparations']),
      `the original of this cast is not recorded: "${cast}"`,
      'record the original as a specimen of its own, or correct the id',
    );
  }
  value.landmarks.forEach((source, index) =>
    checkLandmarkSource(specimen, source, index, records, refer, report),
  );
  value.pictures.forEach((picture, index) =>
    expectFile(picture.file, records.folder.files, specimen.at(['pictures', index, 'file']), report),
  );
  value.lost.forEach(({ landmark }, index) => refer('landmark', landmark, ['lost', index, 'landmark']));
  value.filler.forEach((filler, index) => {
    refer(
      'landmark',
      typeof filler === 'string' ? filler : filler.landmark,
      typeof filler === 'string' ? ['filler', index] : ['filler', index, 'landmark'],
    );
  });
  value.distortion.forEach(({ affects }, index) => {
    const path = itemPath(specimen, 'distortion', index);
    affects.forEach((id) => refer('landmark', id, [...path, 'affects']));
  });
  for (const [id, written] of Object.entries(value.measurements)) {
    if (!expectId('measurement', id, known.measurement, specimen.atKey(['measurements'], id), report))
      continue;
    for (const record of Array.isArray(written) ? written : [written]) {
      refer('landmark', record.toBreak, ['measurements', id, 'toBreak']);
      refer('reference', record.source, ['measurements', id, 'source']);
    }
  }
}

function checkLandmarkSource(
  specimen: Located<Specimen>,
  source: Specimen['landmarks'][number],
  index: number,
  records: LineageRecords,
  refer: Refer,
  report: Report,
): void {
  const path = itemPath(specimen, 'landmarks', index);
  refer('view', source.view, [...path, 'view']);
  expectFile(source.sheet, records.folder.files, specimen.at([...path, 'sheet']), report);
  if (source.picture !== undefined)
    expectFile(source.picture, records.folder.files, specimen.at([...path, 'picture']), report);
}

/** Id of the original when a specimen is a cast. */
export function castOf(specimen: Specimen): string | undefined {
  return /^cast of: (\S+)$/.exec(specimen.preparations)?.[1];
}

function checkTraits(records: LineageRecords, check: (record: Located<unknown>) => Refer): void {
  for (const trait of records.traits.records) {
    const refer = check(trait);
    const { ratio, length, angle, count, size, source } = trait.value;
    refer('measurement', ratio?.part, ['ratio', 'part']);
    refer('measurement', ratio?.whole, ['ratio', 'whole']);
    refer('measurement', length, ['length']);
    refer('measurement', angle, ['angle']);
    refer('measurement', count, ['count']);
    refer('reference', source, ['source']);
    if (typeof size === 'string') refer('measurement', size, ['size']);
    else size?.forEach((id, index) => refer('measurement', id, ['size', index]));
  }
}
