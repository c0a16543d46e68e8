import type { TaxonObservation } from '../analyse/observe-trait.ts';
import type { Taxon } from '../schema/index.ts';

/**
 * What else is to be known of a value, as codes in a fixed order. Without a spread between specimens of one kind
 * (`spread-unknown`) an interval is at best.
 */
export function facetsOf(taxon: Taxon, { counted }: TaxonObservation, spreadKnown: boolean): string[] {
  const facets = [taxon.living ? 'living' : 'fossil'];
  if (counted.some((value) => value.approximate)) facets.push('approximate');
  if (counted.some((value) => value.specimen.record.value.preparations.startsWith('cast')))
    facets.push('cast');
  if (counted.some((value) => value.mirrored)) facets.push('mirrored');
  if (counted.some((value) => value.from === 'literature')) facets.push('literature');
  if (!spreadKnown) facets.push('spread-unknown');
  return facets;
}
