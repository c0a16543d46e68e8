export type Scale = 'plain' | 'log' | 'logit';

/** A value of a trait on the scale that it is analysed on; logit is of per cent. NaN outside the scale's domain. */
export function toScale(value: number, scale: Scale): number {
  if (scale === 'log') return value > 0 ? Math.log(value) : NaN;
  if (scale === 'logit') return value > 0 && value < 100 ? Math.log(value / (100 - value)) : NaN;
  return value;
}

/** Back from the scale to the trait's unit. */
export function fromScale(value: number, scale: Scale): number {
  if (scale === 'log') return Math.exp(value);
  return scale === 'logit' ? 100 / (1 + Math.exp(-value)) : value;
}

/** Standard deviation on the scale of one in the trait's unit, to first order. */
export function sdToScale(sd: number, value: number, scale: Scale): number {
  if (scale === 'log') return sd / value;
  return scale === 'logit' ? (sd * 100) / (value * (100 - value)) : sd;
}
