import { normalDraw, seededRandom } from '../../analysis/random/index.ts';
import {
  angleDegrees,
  angleErrorDegrees,
  distanceMm,
  errorOfMean,
  findRepeatComponents,
  polylineError,
  polylineMm,
  ratioOf,
  type Point,
} from '../../analysis/traits/index.ts';
import { holdToAccount, type Part } from './account.ts';
import { railReadings } from './rail-readings.ts';
import known from './values/measurement-error.json' with { type: 'json' };
import rails from './values/rails.json' with { type: 'json' };

const { ratio, angle, distance, polyline, replicates } = known;
const degreesInRadian = 180 / Math.PI;
const point = (values: readonly number[]): Point => values as unknown as Point;

function ratioAnswer(): Part {
  const [part, whole] = [
    { mm: ratio.A, error: ratio.sA },
    { mm: ratio.B, error: ratio.sB },
  ];
  const { value, error, logError } = ratioOf(part, whole);
  return {
    ratio: value,
    sd_indep: error,
    'sd_corr0.3': ratioOf(part, whole, { correlation: 0.3 }).error,
    lnRatio: Math.log(value),
    sd_ln: logError,
    // what the mean of many ratios lies above the ratio of the means, to second order
    secondOrderMeanBias: value * (whole.error / whole.mm) ** 2,
  };
}

/** Mean and standard deviation of so many ratios or angles with errors drawn for each. */
function drawn(count: number, seed: string, draw: (error: () => number) => number) {
  const random = seededRandom(seed);
  let [mean, squares] = [0, 0];
  for (let k = 1; k <= count; k++) {
    const value = draw(() => normalDraw(random));
    const off = value - mean;
    mean += off / k;
    squares += off * (value - mean);
  }
  return { mean, sd: Math.sqrt(squares / (count - 1)) };
}

const corners = [angle.P, angle.V, angle.Q].map(point) as [Point, Point, Point];

function angleAnswer(): Part {
  const degrees = angleDegrees(...corners);
  const error = angleErrorDegrees(...corners, angle.sigmaPerCoordinate);
  return {
    angleDeg: degrees,
    angleRad: degrees / degreesInRadian,
    closedForm: error / degreesInRadian,
  };
}

/** Change of the angle with each coordinate of its three points, by central differences of the engine's angle. */
function angleGradient(): number[] {
  const step = 1e-5;
  return corners.flatMap((corner, which) =>
    corner.map((_, axis) => {
      const [more, less] = [step, -step].map((by) =>
        angleDegrees(
          ...(corners.map((each, k) =>
            k === which ? each.map((value, a) => value + (a === axis ? by : 0)) : each,
          ) as unknown as typeof corners),
        ),
      );
      return (more! - less!) / (2 * step) / degreesInRadian;
    }),
  );
}

function repeats(readings: readonly (readonly number[])[]) {
  return findRepeatComponents(readings)!;
}

holdToAccount({
  name: 'measurement error',
  values: known,
  given: [
    'ratio/A',
    'ratio/B',
    'ratio/sA',
    'ratio/sB',
    'angle/P',
    'angle/V',
    'angle/Q',
    'angle/sigmaPerCoordinate',
    'distance/P',
    'distance/Q',
    'distance/sigma',
    'polyline/points',
    'polyline/sigma',
    'replicates/reps',
  ],
  described: {
    'ratio/mc/n': 'draws of the reference; ours are fewer',
    'angle/closedFormVar': 'the formula in words',
    'distance/note': 'a remark',
  },
  checks: [
    { claim: 'a ratio with its errors', at: 'ratio', within: 1e-14, answer: ratioAnswer },
    {
      claim: 'a ratio by drawing its errors, as the reference did four million times',
      at: 'ratio/mc',
      within: 0.01,
      answer: () =>
        drawn(
          20_000,
          'ratio',
          (error) =>
            ratioOf(
              { mm: ratio.A + ratio.sA * error(), error: 0 },
              { mm: ratio.B + ratio.sB * error(), error: 0 },
            ).value,
        ),
    },
    { claim: 'an angle with its error', at: 'angle', within: 1e-14, answer: angleAnswer },
    {
      claim: 'an angle’s error by the gradient of each coordinate',
      at: 'angle',
      within: 1e-8,
      size: 0.01,
      answer: () => {
        const gradient = angleGradient();
        const error = angle.sigmaPerCoordinate * Math.hypot(...gradient);
        return { gradient, sdRad: error, sdDeg: error * degreesInRadian };
      },
    },
    {
      claim: 'an angle by drawing its errors',
      at: 'angle',
      within: 0.01,
      answer: () => {
        const { mean, sd } = drawn(20_000, 'angle', (error) =>
          angleDegrees(
            ...(corners.map((corner) =>
              corner.map((value) => value + angle.sigmaPerCoordinate * error()),
            ) as unknown as typeof corners),
          ),
        );
        return { mcMeanDeg: mean, mcSdDeg: sd };
      },
    },
    {
      claim: 'a straight distance with its error',
      at: 'distance',
      within: 1e-14,
      answer: () => {
        const ends = [point(distance.P), point(distance.Q)];
        return { distance: distanceMm(ends[0]!, ends[1]!), sd: polylineError(ends, distance.sigma) };
      },
    },
    {
      claim: 'a line of several pieces, and what the error of pieces taken apart would be',
      at: 'polyline',
      within: 1e-14,
      answer: () => {
        const points = polyline.points.map(point);
        const apart = points.slice(1).map((end, k) => polylineError([points[k]!, end], polyline.sigma));
        return {
          length: polylineMm(points),
          sdIfSegmentsTreatedIndependent: Math.hypot(...apart),
        };
      },
    },
    {
      // the reference took its gradient by differences: ours is the closed form, 0.1 √3.2
      claim: 'a line of several pieces has the error of its full gradient',
      at: 'polyline',
      within: 1e-9,
      answer: () => ({ sd: polylineError(polyline.points.map(point), polyline.sigma) }),
    },
    {
      claim: 'skulls measured three times each',
      at: 'replicates',
      within: 1e-12,
      answer: () => {
        const found = repeats(Object.values(replicates.reps));
        return {
          MSwithin: found.within,
          MSamong: found.among,
          measurementSD: Math.sqrt(found.within),
          s2among: found.amongComponent,
          percentME: found.percentError,
          repeatability_ICC: found.repeatability,
          seOfMeanOf3: errorOfMean({ reading: found.within }, { readings: 3 }),
          anovaCheck: { MSamong: found.among, MSwithin: found.within, F: found.among / found.within },
        };
      },
    },
  ],
});

holdToAccount({
  name: 'rails',
  values: rails,
  given: ['rail', 'travel'],
  checks: [
    {
      claim: 'variance among and within rails',
      within: 1e-13,
      answer: () => {
        const found = repeats(railReadings);
        return {
          MSamong: found.among,
          MSwithin: found.within,
          sigmaAmong: Math.sqrt(found.amongComponent),
          sigmaWithin: Math.sqrt(found.within),
          ICC: found.repeatability,
          percentME: found.percentError,
        };
      },
    },
    {
      // balanced data: restricted likelihood gives what the analysis of variance does, as far as its maximum is found
      claim: 'the same by the restricted likelihood of a mixed model',
      within: 2e-9,
      answer: () => {
        const found = repeats(railReadings);
        return {
          mixedModelSigmaAmong: Math.sqrt(found.amongComponent),
          mixedModelSigmaWithin: Math.sqrt(found.within),
        };
      },
    },
  ],
});
