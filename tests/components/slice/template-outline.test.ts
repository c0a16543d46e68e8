import { expect, test } from 'vitest';
import type { DrawingTemplate } from '../../../analysis/geometry/index.ts';
import { templateOutline } from '../../../components/slice/template-outline.ts';

/** A square bone of four straight edges, some of which are not drawn. */
function square(undrawn?: readonly number[]): DrawingTemplate {
  const corners = ([[0, 0], [40, 0], [40, 40], [0, 40], [0, 0]] as const).flatMap((at) => [at, 'corner']); // prettier-ignore
  return {
    landmarks: {},
    pieces: [{ id: 'bone', kind: 'bone', part: 'all', bone: 'all', through: corners, undrawn }],
  } as unknown as DrawingTemplate;
}

const linesOf = (undrawn?: readonly number[]) => {
  const { points, lines } = templateOutline(square(undrawn), undefined);
  return lines.map(({ role, first, last }) => ({
    role,
    from: points[first],
    to: points[last],
    count: last - first + 1,
  }));
};

test('a bone with all its edges is one ring', () => {
  expect(linesOf().map(({ role }) => role)).toEqual(['bone']);
});

test('edges that follow each other are one line, and one that is not drawn parts them', () => {
  expect(linesOf([1])).toEqual([
    { role: 'bone-fill', from: [0, 0], to: [0, 0], count: 8 },
    { role: 'bone-edge', from: [0, 0], to: [40, 0], count: 2 },
    { role: 'bone-edge', from: [40, 40], to: [0, 0], count: 4 },
  ]);
});

test('a bone without a drawn edge is a fill alone', () => {
  expect(linesOf([0, 1, 2, 3]).map(({ role }) => role)).toEqual(['bone-fill']);
});
