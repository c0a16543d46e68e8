import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { DrawingTemplate } from '../../../analysis/geometry/index.ts';
import { didYouMean } from '../findings/suggest.ts';
import type { Report } from '../findings/report.ts';
import type { LineageRecords } from '../read/lineage-records.ts';
import { readTemplates } from '../templates.ts';

const shipped = fileURLToPath(new URL('../../../content/templates', import.meta.url));

/**
 * The templates that the views of a lineage name, from the folder `templates` beside it, else from those that come with the
 * tool. A name that neither has is a finding at the view.
 */
export async function findTemplates(
  folder: string,
  records: LineageRecords,
  report: Report,
): Promise<DrawingTemplate[]> {
  const views = records.scheme?.value.views ?? [];
  const wanted = new Set(views.flatMap(({ template }) => template ?? []));
  if (wanted.size === 0) return [];
  const known = new Map([
    ...(await readTemplates(shipped, report)),
    ...(await readTemplates(join(dirname(folder), 'templates'), report)),
  ]);
  views.forEach(({ template }, index) => {
    if (template === undefined || known.has(template)) return;
    report.add(
      'unknown-id',
      records.scheme!.at(['views', index, 'template']),
      `no template is called "${template}"${didYouMean(template, known.keys())}`,
      'name one of the folder templates, or add it there',
    );
  });
  return [...known.values()].filter(({ id }) => wanted.has(id));
}
