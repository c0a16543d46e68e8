/** Scale on which a trait is thought to wander. `whole` is what 100% is in the trait's unit, for logit only. */
export interface TraitScale {
  readonly kind: 'plain' | 'log' | 'logit';
  readonly whole?: number;
}

/** Whether a value can stand on a scale: log needs more than 0, logit more than 0 and less than the whole. */
export function isOnScale(scale: TraitScale, value: number): boolean {
  if (!Number.isFinite(value)) return false;
  if (scale.kind === 'plain') return true;
  return value > 0 && (scale.kind === 'log' || value < wholeOf(scale));
}

/** Value on the scale of the model. Throws for a value that cannot stand there, naming it. */
export function toScale(scale: TraitScale, value: number): number {
  if (!isOnScale(scale, value)) {
    const room = scale.kind === 'logit' ? `between 0 and ${wholeOf(scale)}` : 'above 0';
    throw new Error(
      `a ${scale.kind} scale needs values ${scale.kind === 'plain' ? 'that are numbers' : room}, got ${value}`,
    );
  }
  if (scale.kind === 'plain') return value;
  return scale.kind === 'log' ? Math.log(value) : Math.log(value / (wholeOf(scale) - value));
}

/** Value in the trait's unit. Medians and ends of intervals go back as they are; means and errors do not. */
export function fromScale(scale: TraitScale, value: number): number {
  if (scale.kind === 'plain') return value;
  return scale.kind === 'log' ? Math.exp(value) : wholeOf(scale) / (1 + Math.exp(-value));
}

/**
 * Standard error on the scale of the model of a value with a standard error in the trait's unit: first order, the error
 * times the slope of the scale at the value, poor where it is large beside the way to an end of the scale.
 */
export function errorOnScale(scale: TraitScale, value: number, error: number): number {
  if (scale.kind === 'plain') return error;
  if (scale.kind === 'log') return error / value;
  return (error * wholeOf(scale)) / (value * (wholeOf(scale) - value));
}

function wholeOf(scale: TraitScale): number {
  return scale.whole ?? 100;
}
