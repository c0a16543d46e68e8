import { createHash } from 'node:crypto';
import type { CompiledLineage } from '../contract.ts';

/** Digits that a result is compared at: fewer than are printed anywhere, so that another machine's last bits do not matter. */
const compared = 6;

/**
 * SHA-256 of what was found: for each trait and taxon its status, estimate, interval and limits at six significant
 * digits, and for each level of a section its mean, its age and the weights of the models. Texts, the tool's version and the order of records take no part.
 */
export function resultDigest(
  traits: CompiledLineage['traits'],
  section?: CompiledLineage['section'],
): string {
  const rows = traits.flatMap((trait) =>
    trait.values.map((value) => {
      const { atLeast, atMost } = value.limits ?? {};
      const numbers = [value.estimate, ...value.interval, atLeast ?? null, atMost ?? null].map(shortened);
      return [trait.id, value.taxon, value.status, ...numbers].join(' ');
    }),
  );
  const all = [...rows, ...(section ? sectionRows(section) : [])];
  return createHash('sha256').update(all.sort().join('\n')).digest('hex');
}

function sectionRows({ id, levels, models, verdict }: NonNullable<CompiledLineage['section']>): string[] {
  return [
    [id, verdict.code, verdict.reason].join(' '),
    ...levels.map((level) =>
      [id, level.id, ...[level.ageMa, level.estimate, ...level.interval].map(shortened)].join(' '),
    ),
    ...models.joint.map(({ name, weight }) => [id, name, shortened(weight)].join(' ')),
  ];
}

function shortened(value: number | null): string {
  return value === null ? '-' : String(Number(value.toPrecision(compared)));
}
