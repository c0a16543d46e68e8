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
  lastFind: {
    firstMa: 83.2,
    lastMa: 71.5,
    horizons: 9,
    extensionMa: 5.314320571352757,
    youngestMa: 66.18567942864725,
  },
} as const;

/** Extension of one end as a share of the range, by horizons, at a confidence of 0.5, 0.9, 0.95 and 0.99 (equation 20), closed form in R 4.2.2. */
export const oneEndExtensions = [
  [2, 1, 9.000000000000002, 18.999999999999982, 98.99999999999991],
  [3, 0.41421356237309515, 2.1622776601683795, 3.472135954999578, 8.999999999999996],
  [4, 0.2599210498948732, 1.1544346900318838, 1.7144176165949054, 3.6415888336127775],
  [5, 0.18920711500272103, 0.778279410038923, 1.1147425268811277, 2.1622776601683786],
  [6, 0.1486983549970351, 0.5848931924611136, 0.82056420302608, 1.5118864315095797],
  [8, 0.10408951367381225, 0.3894954943731377, 0.5341274046343907, 0.9306977288832499],
  [10, 0.08005973889230611, 0.2915496650148839, 0.39495079396242083, 0.6681005372000586],
  [12, 0.06504108943996267, 0.23284673944206613, 0.31303243448788387, 0.5199110829529336],
  [15, 0.050756638653219444, 0.1787686347935873, 0.23859896844555406, 0.38949549437313746],
  [20, 0.03715504444619189, 0.12883789168468907, 0.17077991372277923, 0.2742749857031337],
  [30, 0.02418956024899721, 0.08263673387405435, 0.10882524037587848, 0.17210229753348005],
  [50, 0.014246386967327274, 0.048113134154685655, 0.06304495944939159, 0.09854114198755815],
  [100, 0.007026054383499014, 0.023531021899026117, 0.03072240652208702, 0.04761575278966479],
] as const;

/** Extension of both ends at a confidence of 0.95 (equation 19), by root finding in R 4.2.2. */
export const bothEndsExtensions = [
  [3, 4.8325294781430985],
  [4, 2.2990724050951328],
  [5, 1.4647272995930385],
  [6, 1.0644492165056245],
  [8, 0.6824269640358019],
  [10, 0.5002427980269684],
  [15, 0.29887362309771265],
  [20, 0.21278242985833484],
  [50, 0.07782529664494052],
] as const;
