import { expectFile, expectId } from '../check/expect-id.ts';
import type { Known } from '../check/known.ts';
import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import type { Section } from '../schema/index.ts';
import type { Located } from '../source/yaml-source.ts';
import { sectionSources } from './sources.ts';

/** Every id and file that section.yaml names leads somewhere, its trait is a length, and its rocks lie one on the other. */
export function checkSection(records: LineageRecords, known: Known, report: Report): void {
  const { section, folder } = records;
  if (!section) return;
  const { taxon, trait, levels, individuals, drawing } = section.value;
  expectId('taxon', taxon, known.taxon, section.at(['taxon']), report);
  if (expectId('trait', trait, known.trait, section.at(['trait']), report))
    checkTrait(records, section, report);
  expectFile(levels, folder.files, section.at(['levels']), report);
  expectFile(individuals, folder.files, section.at(['individuals']), report);
  if (drawing) expectId('view', drawing.view, known.view, section.at(['drawing', 'view']), report);
  for (const { key, span } of sectionSources(records))
    expectId('reference', key, known.reference, span, report);
  checkRocks(section, report);
  checkStages(section, report);
  checkGeneration(section, report);
}

function checkTrait({ traits }: LineageRecords, section: Located<Section>, report: Report): void {
  const { trait } = section.value;
  const record = traits.records.find(({ value }) => value.id === trait);
  if (!record || record.value.length !== undefined) return;
  report.add(
    'trait-kind',
    section.at(['trait']),
    `"${trait}" is no length, and worn crowns can only limit a length`,
    'name a trait of traits.yaml that has length:',
  );
}

function checkRocks(section: Located<Section>, report: Report): void {
  section.value.rocks.forEach(({ from, to }, index) => {
    const below = section.value.rocks[index - 1];
    if (to <= from)
      report.add(
        'superposition',
        section.at(['rocks', index, 'to']),
        `the bed ends at ${to} m and begins at ${from} m`,
        'from is the lower end, to the upper',
      );
    else if (below && from < below.to)
      report.add(
        'superposition',
        section.at(['rocks', index, 'from']),
        `the bed begins at ${from} m, inside the one below it, which ends at ${below.to} m`,
        'list the beds from the base up, each above the one before',
      );
  });
}

function checkStages(section: Located<Section>, report: Report): void {
  const first = new Set<string>();
  section.value.wear.forEach(({ id }, index) => {
    if (first.has(id))
      report.add(
        'duplicate-id',
        section.at(['wear', index, 'id']),
        `the id "${id}" is given twice`,
        'give one of the two stages another id, or remove it',
      );
    first.add(id);
  });
}

function checkGeneration(section: Located<Section>, report: Report): void {
  const { generation } = section.value;
  if (!generation || generation.source !== undefined) return;
  report.add(
    'generation-unsourced',
    section.at(['generation']),
    `a generation of ${generation.years} years has no source, so no rate a generation is given`,
    'name the reference that it was taken from under source, or remove it',
  );
}
