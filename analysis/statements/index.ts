/* What the numbers say, as codes with arguments: values, places on the way, misses, spans, models, limits, repeats, last finds, and what is unknown. */
export { improbableLimit, improbableStatement } from './limit.ts';
export { lastFindStatement, type SaidLastFind } from './last-find.ts';
export { leftOutStatement, type Miss } from './left-out.ts';
export { modelStatement, sensitivityStatement, type SaidModel } from './model.ts';
export { placeStatement } from './place.ts';
export { repeatsStatement, type SaidRepeats } from './repeats.ts';
export {
  decimalsOfError,
  halfWidthOf,
  rounded,
  roundedDown,
  roundedUp,
  type OpenInterval,
} from './rounding.ts';
export type { SaidValue } from './said-value.ts';
export { fineShares, wideShares, type Share } from './shares.ts';
export { boundedSpanStatement, spanStatement, type SaidSpan } from './span.ts';
export { statement, type Statement } from './statement.ts';
export { valueStatement } from './value.ts';
