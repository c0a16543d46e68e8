import { statement, type Statement } from './statement.ts';

/** A limit that relatives give a smaller chance than this is worth another look: limit and relatives are both shown. */
export const improbableLimit = 0.001;

/** No smaller chance than one in so many is told: it would rest on the far tail of a model. */
const rarest = 1e6;

/** That relatives find a limit very improbable: one chance in so many, to one digit; undefined where they do not. */
export function improbableStatement(
  specimen: string,
  probability: number | undefined,
): Statement | undefined {
  if (probability === undefined || probability >= improbableLimit) return undefined;
  return statement('limit.improbable', {
    specimen,
    oneIn: Math.min(rarest, Number((1 / probability).toPrecision(1))),
  });
}
