/*
 * The nine tips of nine-tips.ts with a mean that changes steadily with time, by generalised least squares in R 4.2.2
 * (nlme 3.1-162 agrees); likelihoods of all nine without error: Brownian motion, trend, Pagel's lambda (off-diagonals
 * scaled; Pagel 1999, Nature 401: 877–884) and the pull to an optimum with a stationary root (Hansen 1997, Evolution 51:
 * 1341–1351), explicit covariance matrices with the scale profiled out.
 */
export const trendReference = {
  withoutG: [
    {
      withError: false,
      root: 1.8504509037143213,
      slope: 0.017507752424496762,
      slopeError: 0.0023592944986672573,
      rateReml: 0.000394915269925732,
      rateMl: 0.000296186452444299,
      logLikelihoodMl: 8.189425403033898,
      logLikelihoodReml: 0.8326070252806095,
      aicc: -4.3788508060677955,
      mean: 2.5884811136496904,
      deviation: 0.10558296635356694,
      low: 2.330128902000107,
      high: 2.846833325299274,
      weights: {
        A: 0.021443715149023317,
        B: 0.012831512496772396,
        C: 0.034448810609003976,
        D: 0.24738384754820625,
        E: 0.21983446885573107,
        F: 0.14103390346440586,
        H: 0.17735301267832776,
        J: 0.14567072919852947,
      },
    },
    {
      withError: true,
      root: 1.8936102142991682,
      slope: 0.017269257008616534,
      slopeError: 0.0025930974812106065,
      rateReml: 0.00034292816472761923,
      rateMl: 0.0002460636442225061,
      logLikelihoodMl: 7.156990265384198,
      logLikelihoodReml: 0.26193155622550046,
      aicc: -2.3139805307683954,
      mean: 2.5945307536630264,
      deviation: 0.10172687914603241,
      low: 2.3456140475006078,
      high: 2.843447459825445,
      weights: {
        A: 0.010634044929258367,
        B: 0.0005710121288257514,
        C: 0.04553412927125737,
        D: 0.28742593687511964,
        E: 0.2282916824602568,
        F: 0.1368572099391851,
        H: 0.16912181794242778,
        J: 0.12156416645366913,
      },
    },
  ],
  allNine: {
    brownian: { logLikelihood: -0.7446918110964909, aicc: 7.489383622192982 },
    trend: { logLikelihood: 9.603426679126425, aicc: -8.40685335825285 },
    lambda: [
      { lambda: 0, logLikelihood: -5.175751874208553 },
      { lambda: 0.25, logLikelihood: -4.031297002966703 },
      { lambda: 0.5, logLikelihood: -2.969929742697353 },
      { lambda: 0.75, logLikelihood: -1.9194034294641593 },
      { lambda: 1, logLikelihood: -0.7446918110964909 },
    ],
    pull: [
      {
        pull: 0.01,
        logLikelihood: -2.12172647026766,
        optimum: 2.7699923365393855,
        rate: 0.003735064502850589,
      },
      {
        pull: 0.02,
        logLikelihood: -2.153482511577595,
        optimum: 2.7319984940551594,
        rate: 0.00512801210205464,
      },
      {
        pull: 0.05,
        logLikelihood: -2.7088128259061985,
        optimum: 2.6852754403179446,
        rate: 0.011193214481026273,
      },
      {
        pull: 0.1,
        logLikelihood: -3.296746778079326,
        optimum: 2.6783749489034383,
        rate: 0.024464265787168735,
      },
      { pull: 0.3, logLikelihood: -3.538243293808271, optimum: 2.687471554504037, rate: 0.07711757108058787 },
    ],
    bestPull: { pull: 0.013226347596156469, logLikelihood: -2.1027000025715594 },
  },
} as const;
