import { describe, expect, test } from 'vitest';
import { layOutSeries } from '../../../components/series/series-layout.ts';

const skull = (taxon: string, middle: number, width = 100, height = 60) => ({ taxon, middle, width, height });

describe('a series in lanes', () => {
  test('has one lane where no skull would cover another', () => {
    const { places, height } = layOutSeries([skull('a', 60), skull('b', 200)], 10);
    expect(places).toEqual([
      { taxon: 'a', left: 10, rise: 0 },
      { taxon: 'b', left: 150, rise: 0 },
    ]);
    expect(height).toBe(70);
  });

  test('never lets two skulls of a lane come nearer than the gap, whatever their ages', () => {
    const skulls = Array.from({ length: 40 }, (_, index) =>
      skull(String(index), (index * 37) % 500, 60 + (index % 5) * 20, 40 + (index % 3) * 15),
    );
    const { places, height } = layOutSeries(skulls, 8);
    for (const place of places)
      for (const other of places) {
        const [one, two] = [skulls[Number(place.taxon)]!, skulls[Number(other.taxon)]!];
        if (place === other || place.rise !== other.rise) continue;
        expect(Math.abs(one.middle - two.middle)).toBeGreaterThanOrEqual((one.width + two.width) / 2 + 8);
      }
    for (const { taxon, rise } of places)
      expect(rise + skulls[Number(taxon)]!.height).toBeLessThanOrEqual(height);
  });

  test('makes a lane as high as its highest skull, and none for no skulls', () => {
    const { places, height } = layOutSeries([skull('a', 50, 100, 90), skull('b', 60)], 10);
    expect(places[1]!.rise).toBe(100);
    expect(height).toBe(170);
    expect(layOutSeries([], 10)).toEqual({ places: [], height: 0 });
  });
});
