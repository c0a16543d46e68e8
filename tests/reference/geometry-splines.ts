/*
 * Triangles: Zelditch, Swiderski and Sheets 2012, Geometric Morphometrics for Biologists, 2nd ed., chapter 3, equations 3.3
 * to 3.8, which print centroids, sizes and unit shapes to three digits; more digits by base R 4.2.2.
 * Splines: the diamond and the five landmarks are worked examples of Bookstein 1989, IEEE Transactions on Pattern Analysis and
 * Machine Intelligence 11: 567–585 (inputs and printed digits from memory; the answers are those of `solve` in base R
 * 4.2.2 on the full system, and agree with the printed ones).
 */
export const triangles = {
  first: [
    [-1, -1],
    [1, -1],
    [0, 1],
  ],
  second: [
    [1.07, -1.64],
    [3.1, -0.72],
    [1.55, 0.82],
  ],
  centroids: [
    [0, -0.3333333333333333],
    [1.9066666666666667, -0.5133333333333333],
  ],
  sizes: [2.160246899469287, 2.3110892092979305],
  unitFirst: [
    [-0.4629100498862757, -0.3086066999241838],
    [0.4629100498862757, -0.3086066999241838],
    [0, 0.6172133998483675],
  ],
  unitSecond: [
    [-0.36202266156607243, -0.4875046199574999],
    [0.5163510471739201, -0.08942392437090235],
    [-0.15432838560784762, 0.5769285443284022],
  ],
  turnDegrees: -19.175853579836367,
  angle: 0.0894341944821015,
  partial: 0.08940439174606855,
  full: 0.08931501928949968,
  bookstein: [
    [0.5, 1],
    [0.6517826585871599, 0.916433474926016],
  ],
} as const;

export const diamond = {
  from: [
    [0, 1],
    [-1, 0],
    [0, -1],
    [1, 0],
  ],
  to: [
    [0, 0.75],
    [-1, 0.25],
    [0, -1.25],
    [1, 0.25],
  ],
  weightY: [-0.09016844005556025, 0.09016844005556025, -0.09016844005556025, 0.09016844005556025],
  energy: [0, 0.09016844005556025],
  matrixRow: [0.09016844005556025, -0.09016844005556025, 0.09016844005556025, -0.09016844005556025],
  warped: [
    { at: [0.5, 0.5], to: [0.5, 0.5] },
    { at: [-0.3, 0.8], to: [-0.3, 0.6528730511792493] },
    { at: [2, 1], to: [2, 1.201205059304602] },
  ],
} as const;

export const fiveLandmarks = {
  from: [
    [3.6929, 10.3819],
    [6.5827, 8.8386],
    [6.7756, 12.0866],
    [4.8189, 11.2047],
    [5.6969, 10.0748],
  ],
  to: [
    [3.9724, 6.5354],
    [6.6969, 4.1181],
    [6.5394, 7.2362],
    [5.4016, 6.4528],
    [5.7756, 5.1142],
  ],
  /** As printed, from memory. */
  printedWeightX: [-0.038, 0.0232, -0.0248, 0.0798, -0.0402],
  printedWeightY: [0.0424, 0.0159, 0.0288, -0.0454, -0.0418],
  printedAffineX: [1.355, 0.8747, -0.0289],
  printedAffineY: [-2.946, -0.2956, 0.9216],
  energy: [0.0411923388359, 0.0448066403253],
  /** The mean of the two, which the paper prints. */
  printedEnergy: 0.043,
  warped: [
    { at: [5, 10], to: [5.203213256449839, 5.3478810273323365] },
    { at: [6, 11], to: [6.11347893022654, 5.97697050089252] },
  ],
} as const;

/** A unit square whose middle moves; invented, answers by base R 4.2.2. */
export const movedMiddle = {
  from: [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
    [0.5, 0.5],
  ],
  to: [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
    [0.6, 0.55],
  ],
  energySum: 0.012022458674075,
} as const;
