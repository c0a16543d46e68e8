/*
 * Error propagation and repeats, invented numbers; answers by R 4.2.2 (closed forms, numeric gradients, and a Monte
 * Carlo run of four million draws for the ratio). Percent error after Bailey and Byrnes 1990, Systematic Zoology 39:
 * 124–130. `rail` is the data set Rail of R's nlme 3.1-162 (Pinheiro and Bates 2000, Mixed-Effects Models in S and
 * S-PLUS, chapter 1): travel times of ultrasonic waves in six rails, three times each; answers by nlme::lme and anova.
 */
export const measurementError = {
  ratio: {
    part: { mm: 120.4, error: 1.2 },
    whole: { mm: 85.3, error: 0.9 },
    value: 1.4114888628370459,
    error: 0.020486543013298362,
    errorAtCorrelation03: 0.017146221451197215,
    logError: 0.014514137201281977,
    monteCarloError: 0.020486494056080048,
  },
  angle: {
    first: [10, 0, 0],
    vertex: [0, 0, 0],
    second: [6, 8, 1],
    coordinateError: 0.2,
    degrees: 53.34306704551795,
    errorDegrees: 1.9147694747445403,
  },
  polyline: {
    points: [
      [0, 0],
      [3, 4],
      [6, 4],
      [10, 7],
    ],
    coordinateError: 0.1,
    lengthMm: 13,
    error: 0.17888543815547647,
    errorIfPiecesWereIndependent: 0.2449489742783178,
  },
  skulls: {
    readings: [
      [101.2, 101.6, 100.9],
      [88.4, 88.1, 88.9],
      [95, 95.3, 94.6],
      [110.2, 109.7, 110.1],
    ],
    within: 0.12000000000000009,
    among: 252.76222222222222,
    percentError: 0.14229124030531143,
    repeatability: 0.9985770875969469,
    errorOfMeanOfThree: 0.20000000000000007,
  },
  rail: {
    readings: [
      [55, 53, 54],
      [26, 37, 32],
      [78, 91, 85],
      [92, 100, 96],
      [49, 51, 50],
      [80, 85, 83],
    ],
    within: 16.166666666666682,
    among: 1862.099999999999,
    amongDeviation: 24.80546534760255,
    withinDeviation: 4.020779360604942,
    repeatability: 0.9743986768250841,
    percentError: 2.5601323174916017,
  },
} as const;
