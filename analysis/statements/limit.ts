import { statement, type Statement } from './statement.ts';

/** A limit that relatives give a smaller chance than this is worth another look: limit and relatives are both shown. */
export const improbableLimit = 0.001;

/** That relatives find a limit very improbable, with their chance at one significant digit; undefined where they do not. */
export function improbableStatement(
  specimen: string,
  probability: number | undefined,
): Statement | undefined {
  if (probability === undefined || probability >= improbableLimit) return undefined;
  return statement('limit.improbable', { specimen, probability: Number(probability.toPrecision(1)) });
}
