import { createHash } from 'node:crypto';
import type { CompiledLineage } from '../contract.ts';

/** Digits that a result is compared at: fewer than are printed anywhere, so that another machine's last bits do not matter. */
const compared = 6;

/**
 * SHA-256 of what was found: for each trait and taxon its status, estimate, interval and limits at six significant
 * digits. Texts, the tool's version and the order of records take no part.
 */
export function resultDigest(traits: CompiledLineage['traits']): string {
  const rows = traits.flatMap((trait) =>
    trait.values.map((value) => {
      const { atLeast, atMost } = value.limits ?? {};
      const numbers = [value.estimate, ...value.interval, atLeast ?? null, atMost ?? null].map(shortened);
      return [trait.id, value.taxon, value.status, ...numbers].join(' ');
    }),
  );
  return createHash('sha256').update(rows.sort().join('\n')).digest('hex');
}

function shortened(value: number | null): string {
  return value === null ? '-' : String(Number(value.toPrecision(compared)));
}
