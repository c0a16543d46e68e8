/** What is known of a taxon: its mean on the scale of the model and the sampling variance of that mean, 0 if exact. */
export interface Observation {
  readonly taxon: string;
  readonly mean: number;
  readonly variance: number;
}

/** Throws for a value or a variance that no estimate can use, naming the taxon. */
export function requireUsable(observation: Observation): void {
  const { taxon, mean, variance } = observation;
  if (!Number.isFinite(mean)) throw new Error(`value of "${taxon}" must be a number, got ${mean}`);
  if (!(variance >= 0 && variance < Infinity))
    throw new Error(`sampling variance of "${taxon}" must be 0 or more, got ${variance}`);
}
