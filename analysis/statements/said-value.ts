import type { ValueStatus } from '../estimate/index.ts';
import type { OpenInterval } from './rounding.ts';

/** What a statement needs of a value, in the trait's unit. */
export interface SaidValue {
  readonly status: ValueStatus;
  readonly estimate: number | null;
  readonly interval: OpenInterval;
  readonly limits?:
    { readonly atLeast?: number | undefined; readonly atMost?: number | undefined } | undefined;
}
