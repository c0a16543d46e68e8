import { expect, test } from 'vitest';
import { viewOf } from '../../components/lineage/page-context.ts';
import { storyPlan } from '../../components/lineage/story-plan.ts';
import { lineageView } from '../../components/lineage/view.ts';
import { risingTips } from './fixtures/hands.ts';
import { inventedLineage } from './fixtures/invented-lineage.ts';

const lineage = inventedLineage(risingTips);
const [trait] = lineage.traits;

test('traits that steps and values bring into view are named once, the page’s own not at all', () => {
  const body = `
<Step focus="first" trait="length">
<Value of="first" trait="length" /> and <Value of="first" trait="width" />
</Step>
<Step focus="trunk" trait="position">
</Step>`;
  expect(storyPlan(body, trait!).traits).toEqual(['length', 'width']);
});

test('a story that names no trait brings none but the page’s own', () => {
  expect(storyPlan('<Step focus="first"></Step>', trait!).traits).toEqual([]);
});

test('a story component sees the trait that it names, else the page’s own', () => {
  const other = { ...trait!, id: 'length', label: { en: 'Length' } };
  const view = lineageView({ ...lineage, traits: [trait!, other] }, 'en');
  const page = { view, steps: { total: 0, rendered: 0 }, terms: 0 };
  expect(viewOf(page, 'length').trait.id).toBe('length');
  expect(viewOf(page, undefined)).toBe(view);
});
