import { describe, expect, it } from 'vitest';
import { findChartUnit } from '../../analysis/ages/index.ts';
import { findStagesOfPart } from '../../scripts/compile/resolve/unknown-stage.ts';
import { findingsAfter, replaced } from './fixtures/changed-lineage.ts';

describe('a part of a Cenozoic epoch', () => {
  // The International Chronostratigraphic Chart v2024/12: the stages of an epoch, in order, fill it without a gap.
  it.each(['Paleocene', 'Eocene', 'Oligocene', 'Miocene', 'Pliocene'])(
    'is made of stages of the chart that together fill the %s',
    (epoch) => {
      const stages = ['Lower', 'Middle', 'Upper'].flatMap(
        (part) => findStagesOfPart(`${part} ${epoch}`) ?? [],
      );
      const units = stages.map((stage) => findChartUnit(stage)!);
      const whole = findChartUnit(epoch)!;
      expect(units[0]!.fromMa).toBe(whole.fromMa);
      expect(units.at(-1)!.toMa).toBe(whole.toMa);
      units.slice(1).forEach((unit, index) => expect(unit.fromMa).toBe(units[index]!.toMa));
    },
  );

  it('is offered as its stages, by either of its names', async () => {
    expect(findStagesOfPart('Early Palaeocene')).toEqual(['Danian']);
    expect(findStagesOfPart('middle Oligocene')).toBeUndefined();
    expect(await findingsAfter({ 'horizons.yaml': replaced('stage: Langhian', 'stage: Middle Miocene') }))
      .toMatchInlineSnapshot(`
      "horizons.yaml:4:58-72 error unknown-stage
        unknown stage: "Middle Miocene"
        write stages: [Langhian, Serravallian]"
    `);
  });
});
