import { describe, expect, test } from 'vitest';
import { freshMeasured, type Measured } from '../../../components/measuring/bench-record.ts';
import {
  idOfName,
  landmarksNamed,
  ownScheme,
  type BenchScheme,
} from '../../../components/measuring/bench-scheme.ts';
import { readingsOf } from '../../../components/measuring/readings.ts';
import { duplicates } from '../../reference/duplicate-lengths.ts';
import { railReadings } from '../../reference/rail-readings.ts';
import rails from '../../reference/values/rails.json' with { type: 'json' };

const scheme = ownScheme(['A', 'B'], [{ from: 'a', to: 'b' }]);

/** A specimen whose one length reads so many px, 1 px being 1 mm, round by round. */
function withLengths(specimen: string, lengths: readonly number[]): Measured {
  return {
    ...freshMeasured(specimen),
    scale: [
      [0, 0],
      [10, 0],
    ],
    scaleMm: 10,
    rounds: lengths.map((length) => ({ a: [5, 5] as const, b: [5, 5 + length] as const })),
  };
}

function read(groups: readonly (readonly number[])[]) {
  const specimens = groups.map((lengths, index) => withLengths(`one-${index}`, lengths));
  return readingsOf(specimens[0]!, specimens.slice(1), scheme)[0]!;
}

describe('the technical error', () => {
  test('of pairs is Dahlberg’s', () => {
    expect(read(duplicates.lengths).error!.technical).toBeCloseTo(duplicates.technical, 10);
  });

  test('and the share within specimens are those of the six rails', () => {
    const { technical, sharePercent, specimens } = read(railReadings).error!;
    expect(technical).toBeCloseTo(rails.sigmaWithin, 10);
    expect(sharePercent).toBeCloseTo(rails.percentME, 10);
    expect(specimens).toBe(6);
  });

  test('of one specimen has no share, because nothing varies among specimens', () => {
    const { error, mean } = read([[50, 51]]);
    expect(mean).toBe(50.5);
    expect(error!.sharePercent).toBeUndefined();
    expect(error!.relativePercent).toBeCloseTo((100 * Math.sqrt(1 / 2)) / 50.5, 10);
  });

  test('needs a repeat', () => {
    expect(read([[50]]).error).toBeUndefined();
  });
});

const skull: BenchScheme = {
  ...scheme,
  landmarks: landmarksNamed(['nose', 'naris', 'eye', 'front', 'rear']),
  axes: [
    { id: 'row', name: 'row', from: 'front', to: 'rear', else: [{ from: 'nose', to: 'eye', turned: 0 }] },
  ],
  measurements: [
    { id: 'part', name: 'part', from: 'nose', to: 'naris', along: 'row' },
    { id: 'whole', name: 'whole', from: 'nose', to: 'eye', along: 'row' },
    { id: 'corner', name: 'corner', angle: ['naris', 'nose', 'eye'] },
    { id: 'way', name: 'way', from: 'nose', to: 'eye', through: ['naris'] },
  ],
  traits: [
    {
      id: 'place',
      label: 'place',
      kind: 'ratio',
      unit: 'percent',
      measurements: ['part', 'whole'],
      times: 100,
    },
  ],
};
const points = { nose: [0, 0], naris: [30, 40], eye: [100, 0], front: [0, 90], rear: [70, 90] } as const;
const specimen = (round: Measured['rounds'][number]): Measured => ({
  ...withLengths('one', []),
  scaleMm: 5,
  rounds: [round],
});
const byId = (round: Measured['rounds'][number]) =>
  new Map(readingsOf(specimen(round), [], skull).map(({ id, mean }) => [id, mean]));

test('lengths run along their axis, straight, along a curve, and angles at their vertex (school geometry, no source)', () => {
  const found = byId(points);
  expect(found.get('part')).toBeCloseTo(15, 12);
  expect(found.get('whole')).toBeCloseTo(50, 12);
  expect(found.get('place')).toBeCloseTo(30, 12);
  expect(found.get('corner')).toBeCloseTo((Math.atan2(4, 3) * 180) / Math.PI, 12);
  expect(found.get('way')).toBeCloseTo((50 + Math.hypot(70, 40)) / 2, 12);
});

test('an axis whose points are lost is taken from its substitute, and one whose points coincide gives nothing', () => {
  const { front: _front, ...withoutFront } = points;
  expect(byId(withoutFront).get('part')).toBeCloseTo(15, 12);
  expect(byId({ ...points, rear: points.front }).get('part')).toBeUndefined();
});

test('without a scale nothing is read', () => {
  expect(
    readingsOf({ ...specimen(points), scaleMm: 0 }, [], skull).every(({ mean }) => mean === undefined),
  ).toBe(true);
});

test('names become ids that records take, each once', () => {
  expect(idOfName('  Ángulo  del Hocico ')).toBe('angulo-del-hocico');
  expect(idOfName('2nd molar')).toBe('p2nd-molar');
  expect(landmarksNamed(['Eye', 'eye!', '…', 'Nose tip']).map(({ id }) => id)).toEqual(['eye', 'nose-tip']);
});
