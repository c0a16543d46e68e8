import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { projectRoot } from '../../scripts/options.ts';
import type { CompiledLineage } from '../../scripts/compile/contract.ts';

/**
 * Two pages to compare the explainer with, in `rivals/` of a built site: one with the same words, style sheets and faces but no
 * figure and no script, and one that has the library d3 draw the same marks and lines in the browser.
 */
export async function writeRivals(site: string, explainer: string): Promise<{ scriptBytes: number }> {
  const html = await readFile(join(explainer, 'index.html'), 'utf8');
  const lineage = JSON.parse(await readFile(join(explainer, 'lineage.json'), 'utf8')) as CompiledLineage;
  await mkdir(join(site, 'rivals'), { recursive: true });
  const bare = html
    .replace(/<svg[\s\S]*?<\/svg>/g, '')
    .replace(/<script[\s\S]*?<\/script>/g, '')
    .replace(/<meta http-equiv="content-security-policy"[^>]*>/i, '');
  await writeFile(join(site, 'rivals', 'bare.html'), bare);
  const library = await readFile(join(projectRoot, 'node_modules', 'd3', 'dist', 'd3.min.js'));
  await writeFile(join(site, 'rivals', 'd3.js'), library);
  const program = chartProgram(lineage);
  await writeFile(join(site, 'rivals', 'chart.js'), program);
  const scripts = '<script src="d3.js"></script><script src="chart.js"></script></body>';
  await writeFile(
    join(site, 'rivals', 'drawn.html'),
    bare
      .replace(/(<main[^>]*>)/, '$1<svg id="chart" width="904" height="852"></svg>')
      .replace('</body>', scripts),
  );
  return { scriptBytes: gzipSync(library).length + gzipSync(program).length };
}

/** A scatter of values against ages with axes and names, as one would write it with d3. */
function chartProgram({ traits, taxa }: CompiledLineage): string {
  const names = new Map(taxa.map(({ id, name }) => [id, name]));
  const marks = traits[0]!.values.flatMap(({ taxon, estimate, placedMa, interval }) =>
    estimate === null || placedMa === null ? [] : { name: names.get(taxon), estimate, placedMa, interval },
  );
  return `const marks = ${JSON.stringify(marks)};
const svg = d3.select('#chart');
const x = d3.scaleLinear([0, 110], [60, 880]);
const y = d3.scaleLinear([0, 55], [40, 820]);
svg.append('g').attr('transform', 'translate(0,30)').call(d3.axisTop(x));
svg.append('g').attr('transform', 'translate(50,0)').call(d3.axisLeft(y));
const mark = svg.selectAll('.mark').data(marks).join('g').attr('class', 'mark');
mark.append('line').attr('x1', (d) => x(d.interval[0])).attr('x2', (d) => x(d.interval[1]))
  .attr('y1', (d) => y(d.placedMa)).attr('y2', (d) => y(d.placedMa)).attr('stroke', 'currentColor');
mark.append('circle').attr('cx', (d) => x(d.estimate)).attr('cy', (d) => y(d.placedMa)).attr('r', 5);
mark.append('text').attr('x', (d) => x(d.estimate) + 9).attr('y', (d) => y(d.placedMa) + 4).text((d) => d.name);
`;
}
