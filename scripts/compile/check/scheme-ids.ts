import { didYouMean } from '../findings/suggest.ts';
import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import { indexScheme, shareView } from '../resolve/scheme-index.ts';
import type { Measurement, Scheme } from '../schema/index.ts';
import type { Located } from '../source/yaml-source.ts';
import { expectFile, expectId, type Kind } from './expect-id.ts';
import type { Known } from './known.ts';

type Refer = (kind: Kind, id: string | undefined, path: PropertyKey[]) => void;

/** Every id inside scheme.yaml leads somewhere, and no id is given twice. */
export function checkScheme(records: LineageRecords, known: Known, report: Report): void {
  const { scheme } = records;
  if (!scheme) return;
  const refer: Refer = (kind, id, path) => {
    if (id !== undefined) expectId(kind, id, known[kind], scheme.at(path), report);
  };
  for (const part of ['views', 'axes', 'landmarks', 'measurements', 'elements'] as const)
    checkTwice(part, scheme, report);
  scheme.value.axes.forEach((axis, index) => {
    referEnds(axis, ['axes', index], refer);
    axis.else?.forEach((other, place) => referEnds(other, ['axes', index, 'else', place], refer));
  });
  scheme.value.landmarks.forEach((landmark, index) => {
    landmark.views?.forEach((view, place) => refer('view', view, ['landmarks', index, 'views', place]));
    refer('landmark', landmark.pair, ['landmarks', index, 'pair']);
    refer('reference', landmark.source, ['landmarks', index, 'source']);
  });
  checkElements(scheme, refer, report);
  scheme.value.measurements.forEach((_, index) => checkMeasurement(scheme, index, refer, report));
  scheme.value.sheets.forEach((_, index) => checkSheet(scheme, index, records, refer, report));
}

/** A part lies within an element that is whole itself, and every share has its source. */
function checkElements({ value: { elements }, at }: Located<Scheme>, refer: Refer, report: Report): void {
  const whole = elements.flatMap(({ id, within }) => (within === undefined ? [id] : []));
  elements.forEach(({ within, source }, index) => {
    refer('reference', source, ['elements', index, 'source']);
    if (within === undefined || whole.includes(within)) return;
    report.add(
      'unknown-id',
      at(['elements', index, 'within']),
      `unknown element: "${within}"${didYouMean(within, whole)}`,
      'name an element of this list that is no part itself',
    );
  });
}

function referEnds(
  ends: { from?: string | undefined; to?: string | undefined },
  path: PropertyKey[],
  refer: Refer,
): void {
  refer('landmark', ends.from, [...path, 'from']);
  refer('landmark', ends.to, [...path, 'to']);
}

function checkMeasurement(scheme: Located<Scheme>, index: number, refer: Refer, report: Report): void {
  const measurement = scheme.value.measurements[index]!;
  const path = ['measurements', index];
  referEnds(measurement, path, refer);
  refer('axis', measurement.along, [...path, 'along']);
  refer('reference', measurement.source, [...path, 'source']);
  measurement.through?.forEach((id, place) => refer('landmark', id, [...path, 'through', place]));
  measurement.angle?.forEach((id, place) => refer('landmark', id, [...path, 'angle', place]));
  checkViews(scheme, measurement, path, report);
  const { from, to, angle, count, definition } = measurement;
  const ways = [from !== undefined || to !== undefined, angle !== undefined, count !== undefined].filter(
    Boolean,
  ).length;
  if (ways > 1)
    report.add(
      'measurement-undefined',
      scheme.at([...path, 'id']),
      `"${measurement.id}" is defined in two ways`,
      'keep one of: from and to, angle, count',
    );
  else if ((from === undefined) !== (to === undefined))
    report.add(
      'measurement-undefined',
      scheme.at([...path, 'id']),
      `"${measurement.id}" has one end only`,
      'give both from and to',
    );
  else if (ways === 0 && !definition)
    report.add(
      'measurement-undefined',
      scheme.at([...path, 'id']),
      `nothing says what "${measurement.id}" is`,
      'give from and to, angle, count, or a definition in words for callipers',
    );
}

/** Points of one length must be seen in one view: in two pictures they have no distance. */
function checkViews(
  scheme: Located<Scheme>,
  measurement: Measurement,
  path: PropertyKey[],
  report: Report,
): void {
  if (shareView(measurement, indexScheme(scheme.value).landmarks)) return;
  report.add(
    'views-mixed',
    scheme.at([...path, 'id']),
    `no view shows every landmark of "${measurement.id}"`,
    'measure it by callipers alone, with a definition, or add a view in three dimensions',
  );
}

function checkSheet(
  scheme: Located<Scheme>,
  index: number,
  records: LineageRecords,
  refer: Refer,
  report: Report,
): void {
  const sheet = scheme.value.sheets[index]!;
  const path = ['sheets', index];
  expectFile(sheet.file, records.folder.files, scheme.at([...path, 'file']), report);
  refer('reference', sheet.source, [...path, 'source']);
  for (const [header, column] of Object.entries(sheet.columns)) {
    if (typeof column === 'string') continue;
    for (const key of ['measurement', 'toBreak', 'approximate'] as const) {
      const id = (column as { [K in typeof key]?: string })[key]; // each form has one of the keys
      refer('measurement', id, [...path, 'columns', header, key]);
    }
  }
  for (const [name, taxon] of Object.entries(sheet.taxa ?? {}))
    refer('taxon', taxon, [...path, 'taxa', name]);
}

function checkTwice(
  part: 'views' | 'axes' | 'landmarks' | 'measurements' | 'elements',
  scheme: Located<Scheme>,
  report: Report,
): void {
  const seen = new Set<string>();
  scheme.value[part].forEach(({ id }, index) => {
    if (seen.has(id))
      report.add(
        'duplicate-id',
        scheme.at([part, index, 'id']),
        `the id "${id}" is given twice in ${part}`,
        'give one of the two another id, or remove it',
      );
    seen.add(id);
  });
}
