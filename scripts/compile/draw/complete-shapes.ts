import { estimateTrait } from '../../../analysis/estimate/index.ts';
import type { PlanePoint } from '../../../analysis/geometry/plane.ts';
import { applySimilarity, findSimilarity } from '../../../analysis/geometry/similarity.ts';
import type { DatedLineageTree } from '../analyse/date-trees.ts';
import type { Points } from './frame.ts';
import type { TaxonShape } from './taxon-shape.ts';

/** A point with what it rests on. */
export interface BasedPoint {
  at: PlanePoint;
  basis: 'digitised' | 'relatives';
}

/**
 * Shapes with the points that no specimen shows. Each coordinate of each landmark is estimated on the tree by Brownian motion
 * from the taxa whose shape is in the frame; the estimated shape is then laid on what the taxon itself preserves (least
 * squares, with scale) and lends it the points that it lacks. A taxon outside the tree, or a landmark that fewer than four
 * taxa show, stays without.
 */
export function completeShapes(
  shapes: ReadonlyMap<string, TaxonShape>,
  tree: DatedLineageTree | undefined,
): Map<string, Map<string, BasedPoint>> {
  const expected = tree ? expectedShapes(shapes, tree) : new Map<string, Map<string, PlanePoint>>();
  return new Map(
    [...shapes].map(([taxon, shape]) => [taxon, completeShape(shape, expected.get(taxon) ?? new Map())]),
  );
}

function completeShape(shape: TaxonShape, expected: Points): Map<string, BasedPoint> {
  const own = [...shape.points].map(([id, at]): [string, BasedPoint] => [id, { at, basis: 'digitised' }]);
  const shared = [...shape.points.keys()].filter((id) => expected.has(id));
  const ownPlaces = shared.map((id) => shape.points.get(id)!);
  const expectedPlaces = shared.map((id) => expected.get(id)!);
  // In the frame the bone stays and the estimate moves; without it the estimate is the frame and the bone moves.
  const bone = shape.framed ? undefined : findSimilarity(ownPlaces, expectedPlaces);
  if (!shape.framed && !bone) return new Map();
  const lent = shape.framed ? findSimilarity(expectedPlaces, ownPlaces) : undefined;
  const placed = bone
    ? own.map(([id, point]): [string, BasedPoint] => [id, { ...point, at: applySimilarity(bone, point.at) }])
    : own;
  const missing = [...expected]
    .filter(([id]) => !shape.points.has(id))
    .map(([id, at]): [string, BasedPoint] => [
      id,
      { at: lent ? applySimilarity(lent, at) : at, basis: 'relatives' },
    ]);
  return new Map([...placed, ...missing]);
}

/** For each taxon of the tree that lacks a landmark, or stands outside the frame: the whole shape that relatives suggest. */
function expectedShapes(
  shapes: ReadonlyMap<string, TaxonShape>,
  tree: DatedLineageTree,
): Map<string, Map<string, PlanePoint>> {
  const sources = [...shapes].filter(
    ([taxon, shape]) => shape.framed && !shape.broken && tree.taxa.has(taxon),
  );
  const landmarks = [...new Set(sources.flatMap(([, shape]) => [...shape.points.keys()]))].sort();
  const targets = [...shapes].filter(
    ([taxon, shape]) =>
      tree.taxa.has(taxon) &&
      (!shape.framed || shape.broken || landmarks.some((id) => !shape.points.has(id))),
  );
  const expected = new Map(targets.map(([taxon]) => [taxon, new Map<string, PlanePoint>()]));
  for (const landmark of landmarks) {
    const shown = sources.flatMap(([taxon, shape]) => {
      const at = shape.points.get(landmark);
      return at ? [{ taxon, at }] : [];
    });
    const [x, y] = [0, 1].map((axis) =>
      coordinateOn(
        tree,
        shown.map(({ taxon, at }) => ({ taxon, mean: at[axis]!, variance: 0 })),
      ),
    );
    for (const [taxon, shape] of expected) {
      const place = [x?.get(taxon), y?.get(taxon)];
      if (place[0] !== undefined && place[1] !== undefined) shape.set(landmark, [place[0], place[1]]);
    }
  }
  return expected;
}

/** One coordinate of one landmark for every tip: its own value or the median from relatives; undefined below four taxa. */
function coordinateOn(
  tree: DatedLineageTree,
  observations: { taxon: string; mean: number; variance: number }[],
): Map<string, number> | undefined {
  if (observations.length < 4) return undefined;
  const answer = estimateTrait({ tree: tree.dated, observations });
  if (answer.estimated) return new Map(answer.nodes.map(({ label, median }) => [label, median]));
  // All taxa agree to the last digit: so does everybody else.
  const [first] = observations;
  return new Map([...tree.taxa].map((taxon) => [taxon, first!.mean]));
}
