import { lastFindStatement, type Statement } from '../../analysis/statements/index.ts';
import type { CompiledTaxon } from '../../scripts/compile/contract.ts';

/** What the finds of an animal say of how long it lived on; undefined for a living one, or one of a single bed. */
export function lastFindOf({ finds }: CompiledTaxon): Statement | undefined {
  const { last, lastLimit, horizons } = finds;
  if (!lastLimit || last === null) return undefined;
  return lastFindStatement({ last, beds: horizons.length, ...lastLimit });
}
