import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import {
  applyWarp,
  fitTemplate,
  fitWarp,
  preparePoints,
  templateShape,
  traceCurve,
  warpPoints,
  type DrawingTemplate,
  type PlanePoint,
  type Shape,
} from '../../analysis/geometry/index.ts';
import { seededRandom } from '../../analysis/random/index.ts';
import { numbersBetween } from '../../components/slice/slice-at.ts';
import { shapeOfNode } from '../../components/slice/node-outlines.ts';
import { compileLineage } from '../../scripts/compile/index.ts';

const runs = 15;
const timeout = 10 * 60_000;

const { compiled } = await compileLineage(resolve(import.meta.dirname, '../../content/reed-trunks'));
const shapes = compiled!.shapes!;
const template = compiled!.templates!.find(({ id }) => id === shapes.template) as DrawingTemplate;

/** A hundred skulls anywhere along the tree of the bundled lineage, and two thousand points on the template's curves. */
function makeSkulls(): Shape[] {
  const random = seededRandom('geometry bench');
  const node = () => shapes.nodes[Math.floor(random() * shapes.nodes.length)]!.at;
  return Array.from({ length: 100 }, () => shapeOfNode(shapes, numbersBetween(node(), node(), random())));
}

function makePoints(): PlanePoint[] {
  const places = templateShape(template);
  const curves = template.pieces
    .filter(({ through }) => through && through.length > 1)
    .flatMap(
      ({ through }) =>
        traceCurve(
          through!.map((stop) =>
            typeof stop === 'string' && stop !== 'corner' ? places.get(stop)! : stop,
          ) as Parameters<typeof traceCurve>[0],
          1,
        ).points,
    );
  return Array.from({ length: 2000 }, (_, index) => curves[Math.floor((index * curves.length) / 2000)]!);
}

function quartiles(values: readonly number[]): string {
  const sorted = [...values].sort((one, other) => one - other);
  const at = (share: number) => sorted[Math.floor(share * sorted.length)]!.toFixed(0);
  return `median ${at(0.5)} ms (quartiles ${at(0.25)} to ${at(0.75)})`;
}

test('two thousand curve points for a hundred skulls', { timeout }, () => {
  const [skulls, points] = [makeSkulls(), makePoints()];
  const from = templateShape(template);
  const prepared = preparePoints(points, [...from.values()]);
  const steps = skulls.map((skull) => fitWarp(from, skull).steps.length);
  const ways = {
    'fitted, in runs': () =>
      skulls.reduce((sum, skull) => sum + warpPoints(fitWarp(from, skull), prepared).x[7]!, 0),
    'fitted, point by point': () =>
      skulls.reduce((sum, skull) => {
        const warp = fitWarp(from, skull);
        return sum + points.map((point) => applyWarp(warp, point))[7]![0];
      }, 0),
    'fits alone': () => skulls.reduce((sum, skull) => sum + fitWarp(from, skull).steps.length, 0),
    'fits with folds looked for': () =>
      skulls.reduce((sum, skull) => sum + ('warp' in fitTemplate(template, skull) ? 1 : 0), 0),
  };
  const taken = new Map(Object.keys(ways).map((name) => [name, [] as number[]]));
  const sums = new Map<string, number>();
  for (let run = -1; run < runs; run++)
    for (const [name, way] of Object.entries(ways)) {
      // Time of the processor, not of the clock: other work on the machine does not count.
      const start = process.cpuUsage();
      sums.set(name, way());
      const { user, system } = process.cpuUsage(start);
      if (run >= 0) taken.get(name)!.push((user + system) / 1000);
    }
  console.log(
    `100 skulls, 2,000 points, ${shapes.landmarks.length} landmarks, ${steps.reduce((a, b) => a + b, 0)} splines in all, ${runs} interleaved runs, processor time`,
  );
  for (const [name, values] of taken) console.log(`  ${name}: ${quartiles(values)}`);
  console.log(`  checksum ${sums.get('fitted, in runs')!.toFixed(6)}`);
  expect(sums.get('fitted, in runs')).toBeCloseTo(sums.get('fitted, point by point')!, 6);
});
