import { expect, test } from 'vitest';
import { findToothParts } from '../../../components/figures/section/tooth.ts';
import { composeSkull } from '../../../components/figures/skull/compose-skull.ts';
import { shippedTemplate } from '../skull/fixtures/templates.ts';
import type { CompiledTemplate } from '../../../scripts/compile/contract.ts';

const template = shippedTemplate('cheek-tooth-side') as unknown as CompiledTemplate; // the same shape, frozen
const drawing = {
  template: 'cheek-tooth-side',
  crownLengthMm: 9.4,
  from: 'crown-base-middle',
  to: 'front-cusp-tip',
  source: null,
};
const parts = (heightMm: number) => findToothParts(drawing, [template], heightMm, 'tooth')!;

test.each([4, 8.2, 10.6, 15])('a crown of %d mm stands %d mm above its base', (heightMm) => {
  const { base, tip, mmPerUnit, crown } = parts(heightMm);
  expect((base[1] - tip[1]) * mmPerUnit).toBeCloseTo(heightMm, 10);
  expect(crown.landmarks['front-cusp-tip']!.at).toEqual(tip);
});

test('the roots are the template’s, whatever the height, and are drawn as restored', () => {
  const [low, high] = [parts(8), parts(12)];
  expect(low.roots.landmarks['front-root-tip']).toEqual(high.roots.landmarks['front-root-tip']);
  const roots = composeSkull(low.roots, 'outline');
  const crown = composeSkull(low.crown, 'outline');
  expect(roots.restored.length).toBeGreaterThan(0);
  expect(crown.restored).toEqual([]);
  expect(crown.bone.length).toBeGreaterThan(0);
});

test('without a drawing, its template or its landmarks there is no tooth', () => {
  expect(findToothParts(null, [template], 10, 'tooth')).toBeUndefined();
  expect(findToothParts(drawing, [], 10, 'tooth')).toBeUndefined();
  expect(findToothParts({ ...drawing, to: 'nowhere' }, [template], 10, 'tooth')).toBeUndefined();
});
