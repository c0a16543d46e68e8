import { chartNames } from '../../../analysis/ages/index.ts';
import { didYouMean } from '../findings/suggest.ts';
import type { Report } from '../findings/report.ts';
import type { Located } from '../source/yaml-source.ts';

/**
 * Stages of the parts of Cenozoic epochs, lower to upper: the parts that labels name and the tool’s chart does not list.
 * Common practice; which stages make a part is read off the order of the stages on the chart.
 */
const partsOfEpochs: Readonly<Record<string, readonly (readonly string[])[]>> = {
  paleocene: [['Danian'], ['Selandian'], ['Thanetian']],
  eocene: [['Ypresian'], ['Lutetian', 'Bartonian'], ['Priabonian']],
  oligocene: [['Rupelian'], ['Chattian']],
  miocene: [
    ['Aquitanian', 'Burdigalian'],
    ['Langhian', 'Serravallian'],
    ['Tortonian', 'Messinian'],
  ],
  pliocene: [['Zanclean'], ['Piacenzian']],
};

const part = /^(early|lower|middle|mid|late|upper)[\s-]+(pal(?:a?e)ocene|eocene|oligocene|miocene|pliocene)$/;

/** Stages of a part of a Cenozoic epoch, such as Middle Miocene; undefined for any other name. */
export function findStagesOfPart(name: string): readonly string[] | undefined {
  const [, position, epoch] = part.exec(name.trim().toLowerCase()) ?? [];
  if (position === undefined || epoch === undefined) return undefined;
  const parts = partsOfEpochs[epoch.replace('palae', 'pale')]!;
  if (/^mid/.test(position)) return parts.length === 3 ? parts[1] : undefined;
  return /^(early|lower)$/.test(position) ? parts[0] : parts.at(-1);
}

/** Reports a name that is not on the chart, and offers the chart’s own. */
export function reportUnknownStage(
  name: string,
  record: Located<unknown>,
  path: readonly PropertyKey[],
  report: Report,
): void {
  const stages = findStagesOfPart(name);
  const near = stages ? '' : didYouMean(name, chartNames());
  report.add(
    'unknown-stage',
    record.at(path),
    `unknown stage: "${name}"${near}`,
    stages
      ? `write ${stages.length > 1 ? `stages: [${stages.join(', ')}]` : `stage: ${stages[0]}`}`
      : 'use a name of the International Chronostratigraphic Chart; for a regional age or zone give { from: …, to: … } with its source',
  );
}
