/*
 * Five primates: natural logs of body mass (kg) and of longevity, Lynch 1991, Evolution 45: 1065–1080. The published
 * contrasts, their covariance, regressions and correlation were long printed as test data of the method of independent
 * contrasts; further digits by R 4.2.2. Leaving one out is by generalised least squares in R.
 */
export const primates = {
  newick: '((((Homo:0.21,Pongo:0.21):0.28,Macaca:0.49):0.13,Ateles:0.62):0.38,Galago:1.00);',
  mass: {
    Homo: 4.09434,
    Pongo: 3.61092,
    Macaca: 2.37024,
    Ateles: 2.02815,
    Galago: -1.46968,
  },
  longevity: {
    Homo: 4.74493,
    Pongo: 3.3322,
    Macaca: 3.3673,
    Ateles: 2.89037,
    Galago: 2.30259,
  },
  published: {
    covariance: [
      [3.9423, 1.7028],
      [1.7028, 1.7062],
    ],
    slope: 0.4319,
  },
  rootMass: 1.1837246133953967,
  rootLongevity: 3.0113565994310836,
  rateMass: 3.942300301549741,
  rateLongevity: 1.7062122989674253,
  rateMlMass: 3.153840241239793,
  logLikelihoodMass: -9.194398598496154,
  logLikelihoodLongevity: -7.100677343589582,
  slope: 0.43193275336953457,
  leftOut: [
    {
      tip: 'Homo',
      predicted: 3.0773600541853514,
      sd: 1.2466810475151662,
    },
    {
      tip: 'Pongo',
      predicted: 3.4255762649476833,
      sd: 1.3738676322419807,
    },
    {
      tip: 'Macaca',
      predicted: 2.6647950291684346,
      sd: 1.9349494649766252,
    },
    {
      tip: 'Ateles',
      predicted: 2.265067677329624,
      sd: 2.1663431216916176,
    },
    {
      tip: 'Galago',
      predicted: 2.78082357912179,
      sd: 1.5485466595245772,
    },
  ],
} as const;
