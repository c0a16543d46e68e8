import { join } from 'node:path';
import type { SectionView } from '../../section/section-view.ts';
import { coordinate } from '../scene/scene.ts';
import { keptMarkup } from '../skull/skull-pictures.ts';
import type { LyingTooth } from './section-focus.ts';
import { findToothParts } from './tooth.ts';

/** Where drawn teeth are kept between builds; every command runs in the folder of the project. */
const keptFolder = join(process.cwd(), '.lineament', 'skulls');

/** The tooth that lies on the ruler: what the figure places, and its two groups for the shelf of the page. */
export interface DrawnTooth {
  tooth: LyingTooth;
  shelf: string;
}

/**
 * The tooth of the middle mean of a section, laid on its side with the base of the crown at 0: groups `tooth-crown` and
 * `tooth-roots`. Undefined where the records name no drawing or no level has a mean.
 */
export async function drawLyingTooth({
  view,
  section,
  levels,
}: SectionView): Promise<DrawnTooth | undefined> {
  const means = levels.flatMap(({ estimate }) => estimate ?? []).sort((a, b) => a - b);
  const middle = means[Math.floor(means.length / 2)];
  if (middle === undefined) return undefined;
  const id = `${view.lineage.lineage}-tooth`;
  const parts = findToothParts(section.drawing, view.lineage.templates ?? [], middle, id);
  if (!parts) return undefined;
  const [x, y] = parts.base;
  const laid = `transform="rotate(90) translate(${coordinate(-x)} ${coordinate(-y)})"`;
  const [crown, roots] = await Promise.all(
    [parts.crown, parts.roots].map((drawing) => keptMarkup(drawing, 'hero', keptFolder)),
  );
  return {
    tooth: { drawnMm: middle, mmPerUnit: parts.mmPerUnit, tipMm: (parts.tip[0] - x) * parts.mmPerUnit },
    shelf: `<g id="tooth-roots"><g ${laid}>${roots}</g></g><g id="tooth-crown"><g ${laid}>${crown}</g></g>`,
  };
}
