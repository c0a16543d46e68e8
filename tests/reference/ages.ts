/*
 * Ages: invented dates, answers by closed forms in R 4.2.2 with its chi-squared distribution; stage boundaries of the
 * International Chronostratigraphic Chart v2024/12. Extensions of ranges by the equations of Strauss and Sadler 1989,
 * Mathematical Geology 21: 411–427.
 */
export const agesReference = {
  weighted: {
    dates: [
      { ageMa: 66.05, sigmaMa: 0.04 },
      { ageMa: 65.98, sigmaMa: 0.03 },
      { ageMa: 66.12, sigmaMa: 0.06 },
      { ageMa: 66, sigmaMa: 0.05 },
    ],
    meanMa: 66.01754890678941,
    internalSigmaMa: 0.020353605946582753,
    mswd: 1.7545177513531316,
    fitProbability: 0.15348492526344998,
  },
  scattered: {
    dates: [
      { ageMa: 66.05, sigmaMa: 0.04 },
      { ageMa: 65.7, sigmaMa: 0.03 },
      { ageMa: 66.32, sigmaMa: 0.06 },
      { ageMa: 66, sigmaMa: 0.05 },
    ],
    meanMa: 65.91168009205984,
    mswd: 37.05921024591798,
    externalSigmaMa: 0.12390517407160671,
    fitProbability: 6.1219238486050254e-24,
  },
  stages: [
    { fromMa: 72.2, toMa: 66, sigmaMa: 1.7897858344878408, low: 66.155, high: 72.045 },
    { fromMa: 83.6, toMa: 72.2, sigmaMa: 3.2908965343808645, low: 72.485, high: 83.315 },
    { fromMa: 83.6, toMa: 66, sigmaMa: 5.080682368868706, low: 66.44, high: 83.16 },
  ],
  campanianWithEnds: {
    fromMa: 83.6,
    toMa: 72.2,
    fromSigmaMa: 0.1,
    toSigmaMa: 0.1,
    sigmaMa: 3.291909273759933,
  },
  interpolation: {
    beds: [
      { heightM: 0, ageMa: 75.4, sigmaMa: 0.05 },
      { heightM: 42, ageMa: 74.9, sigmaMa: 0.06 },
    ],
    heightM: 15.5,
    ageMa: 75.2154761904762,
    sigmaMa: 0.038542942155765376,
    metresPerMyr: 84,
  },
  oneEnd95: [
    [3, 3.472135954999578],
    [5, 1.1147425268811277],
    [6, 0.82056420302608],
    [10, 0.39495079396242083],
    [20, 0.17077991372277923],
    [50, 0.06304495944939159],
  ],
  bothEnds95: [
    [3, 4.8325294781430985],
    [5, 1.4647272995930385],
    [10, 0.5002427980269684],
    [20, 0.21278242985833484],
  ],
  lastFind: {
    firstMa: 83.2,
    lastMa: 71.5,
    horizons: 9,
    extensionMa: 5.314320571352757,
    youngestMa: 66.18567942864725,
  },
} as const;
