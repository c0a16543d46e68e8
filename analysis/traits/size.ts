/** Geometric mean of positive measurements, in their unit: a size that no one of them rules. Throws for none, or one of 0 or less. */
export function geometricMean(measurements: readonly number[]): number {
  if (measurements.length === 0) throw new Error('a size needs at least one measurement');
  const wrong = measurements.find((measurement) => !(measurement > 0));
  if (wrong !== undefined) throw new Error(`a size needs measurements above 0, got ${wrong}`);
  return Math.exp(
    measurements.reduce((sum, measurement) => sum + Math.log(measurement), 0) / measurements.length,
  );
}

/**
 * Standard error of the geometric mean of measurements with independent standard errors, in their unit: first order,
 * the mean times the root of the summed squared relative errors, over their number. Throws where the mean does.
 */
export function geometricMeanError(measurements: readonly number[], errors: readonly number[]): number {
  const squares = measurements.reduce(
    (sum, measurement, index) => sum + (errors[index]! / measurement) ** 2,
    0,
  );
  return (geometricMean(measurements) * Math.sqrt(squares)) / measurements.length;
}
