import rails from './values/rails.json' with { type: 'json' };

/** Travel times of the six rails, three readings each. */
export const railReadings: readonly (readonly number[])[] = [...new Set(rails.rail)].map((rail) =>
  rails.travel.filter((_, reading) => rails.rail[reading] === rail),
);
