import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { fullPlateDescription, plateDescription } from '../../components/figures/plate-words.ts';
import { plateData, type PlateData } from '../../components/figures/scene/plate-data.ts';
import { skullAnchors } from '../../components/figures/skull-figures.ts';
import { lineageView, type LineageView } from '../../components/lineage/view.ts';
import { compileLineage } from '../../scripts/compile/index.ts';
import { projectRoot } from '../../scripts/options.ts';

describe.each(['en', 'es', 'ar'])('the description of the plate in %s', (language) => {
  let view: LineageView;
  let bare: LineageView;
  let data: PlateData;
  beforeAll(async () => {
    const folder = join(projectRoot, 'content', 'reed-trunks');
    const { compiled } = await compileLineage(folder, { today: '2026-12-01' });
    view = lineageView(compiled!, language);
    bare = lineageView({ ...compiled!, drawings: [] }, language);
    data = plateData(view.lineage, view.trait, language);
  });

  test('says nothing of missing drawings where skulls are drawn', () => {
    const drawn = skullAnchors(view).size;
    expect(drawn).toBeGreaterThan(10);
    expect(fullPlateDescription(view, data, drawn)).toBe(plateDescription(view, data));
  });

  test('ends by saying that no animal is drawn where the lineage has no drawing', () => {
    const text = fullPlateDescription(bare, data, skullAnchors(bare).size);
    expect(text).toBe(`${plateDescription(bare, data)} ${bare.voice.say('figure.undrawn')}`);
    expect(bare.voice.say('figure.undrawn')).not.toMatch(/[{}]/);
  });
});
