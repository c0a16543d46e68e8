import {
  characterCompleteness,
  findCompleteness,
  type PreservedRecord,
} from '../../../analysis/completeness/index.ts';
import type { AnalysedLineage } from '../analyse/lineage.ts';
import type { CompiledCompleteness } from '../contract-material.ts';
import type { Specimen } from '../schema/index.ts';

/** How much of each animal there is; undefined where neither shares of elements nor characters are recorded. */
export function composeCompleteness({ lineage }: AnalysedLineage): CompiledCompleteness | undefined {
  const { scheme, characters, taxa } = lineage.records;
  const authored = scheme?.value.elements ?? [];
  const skeletal = characters.records.map(({ value }) => value).filter(({ softPart }) => !softPart);
  if (authored.length === 0 && skeletal.length === 0) return undefined;
  const material = materialByTaxon(lineage.specimens.map(({ record }) => record.value));
  const whole = authored.reduce((sum, { share, within }) => (within === undefined ? sum + share : sum), 0);
  return {
    elements: authored.map(({ id, name, share, within, source }) => ({
      id,
      name,
      share: (100 * share) / whole,
      ...(within !== undefined && { within }),
      source,
    })),
    characters: skeletal.length,
    taxa: taxa.records.map(({ value: { id } }) => {
      const specimens = material.get(id) ?? [];
      const found = findCompleteness(authored, specimens);
      const scored = skeletal.filter(
        (each) => Object.values(each.scored).filter((animals) => animals.includes(id)).length === 1,
      ).length;
      return {
        taxon: id,
        specimens: specimens.length,
        best: found?.best ?? null,
        together: found?.together ?? null,
        elements: [...(found?.elements ?? [])].map(([element, share]) => ({ element, percent: 100 * share })),
        scored,
        scoredPercent: characterCompleteness({ characters: skeletal.length, scored, inapplicable: 0 }).ofAll,
      };
    }),
  };
}

/** What each sure specimen has of its elements, by animal; those of which nothing is recorded stay out. */
function materialByTaxon(specimens: readonly Specimen[]): Map<string, PreservedRecord[][]> {
  const byTaxon = new Map<string, PreservedRecord[][]>();
  for (const specimen of specimens) {
    const records = recordsOf(specimen);
    if (!isOneAnimal(specimen) || records.every(({ preserved }) => preserved === 0)) continue;
    const own = byTaxon.get(specimen.taxon) ?? [];
    own.push(records);
    byTaxon.set(specimen.taxon, own);
  }
  return byTaxon;
}

/** Whether a specimen is surely of its animal, and of one alone. */
function isOneAnimal({ identification, association }: Specimen): boolean {
  return (
    (identification?.qualifier ?? 'none') === 'none' && association !== 'composite' && association !== 'lot'
  );
}

function recordsOf({ elements }: Specimen): PreservedRecord[] {
  return elements.map(({ element, side, preserved }) => ({
    element,
    side: side === 'left' || side === 'right' ? side : undefined,
    preserved,
  }));
}
