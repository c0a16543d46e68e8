import type { CompiledEdition } from '../contract-editions.ts';
import type { AuthoredLineage } from '../schema/lineage.ts';

/** Editions with what changed in each, newest first. */
export function composeEditions(editions: AuthoredLineage['editions']): CompiledEdition[] {
  return [...editions]
    .sort((a, b) => b.number - a.number)
    .map(({ number, date, status, changes = [] }) => ({
      number,
      date,
      status,
      changes: changes.map(({ reason, ...text }) => ({ reason, text })),
    }));
}
