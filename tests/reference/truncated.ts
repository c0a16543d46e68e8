/*
 * Values known only from below. `student`: the missing tip G of nine-tips.ts without error, whose distribution is Student's t
 * with seven degrees of freedom, truncated at a floor (R 4.2.2; mean by the closed form and by numeric integration).
 * `standard`: the standard normal distribution truncated at a floor, by truncnorm 1.0-8 (Johnson, Kotz and Balakrishnan 1994,
 * Continuous Univariate Distributions, chapters 13 and 28).
 */
export const truncatedReference = {
  student: [
    {
      atLeast: 2.4,
      probability: 0.7083051322531998,
      mean: 2.7514424479480852,
      low: 2.4169645902550294,
      median: 2.7007933042310097,
      high: 3.3900779383158044,
    },
    {
      atLeast: 2.7,
      probability: 0.3550518882492866,
      mean: 2.9494370636401177,
      low: 2.7078693283152795,
      median: 2.888037931853851,
      high: 3.5404811006898407,
    },
    {
      atLeast: 3.1,
      probability: 0.0694281396483792,
      mean: 3.3169826997177294,
      low: 3.105440370076133,
      median: 3.247201599645051,
      high: 3.927011893624683,
    },
    {
      atLeast: 3.9,
      probability: 0.0019310177489458926,
      mean: 4.1832083655442895,
      low: 3.906387650101291,
      median: 4.080941078186105,
      high: 5.051499885506143,
    },
  ],
  standard: [
    {
      floor: -2,
      mean: 0.05524786267898995,
      variance: 0.8864519483114236,
      low: -1.672819893913775,
      high: 1.9697895615377605,
    },
    {
      floor: -1,
      mean: 0.2875999709391784,
      variance: 0.6296862857766055,
      low: -0.9165514309527315,
      high: 2.0328543789476607,
    },
    {
      floor: 0,
      mean: 0.7978845608028653,
      variance: 0.36338022763241873,
      low: 0.03133798202142661,
      high: 2.2414027276049446,
    },
    {
      floor: 1,
      mean: 1.5251352761609813,
      variance: 0.1990976655703487,
      low: 1.016528579328938,
      high: 2.654918265164825,
    },
    {
      floor: 2,
      mean: 2.37321553282284,
      variance: 0.11427910041408307,
      low: 2.0106469866716044,
      high: 3.2541039209365192,
    },
    {
      floor: 3,
      mean: 3.283098654930434,
      variance: 0.0705591867852764,
      low: 3.007703158620817,
      high: 3.9849480104043615,
    },
    {
      floor: 5,
      mean: 5.186503967125843,
      variance: 0.03269643461711169,
      low: 5.00487925846742,
      high: 5.669367327934362,
    },
    {
      floor: 8,
      mean: 8.121368112236123,
      variance: 0.014324883443251224,
      low: 8.003116841872849,
      high: 8.442339625433464,
    },
  ],
} as const;
