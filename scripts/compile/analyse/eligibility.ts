import type { Specimen, Trait } from '../schema/index.ts';

/** Why a specimen that could yield a value does not count, as a code that is worded per language. */
export type LeftOutReason =
  'young' | 'composite' | 'lot' | 'sick' | 'doubtful' | 'model' | 'author' | 'same-animal';

/** The reason why a specimen stays out of a trait, or undefined when it counts. */
export function findReasonOut(specimen: Specimen, trait: Trait): LeftOutReason | undefined {
  if (specimen.leftOut) return 'author';
  if (/^model/.test(specimen.preparations)) return 'model';
  if (specimen.association === 'lot') return 'lot';
  if (specimen.admitted) return undefined;
  if (trait.adults === 'only' && (specimen.lifeStage === 'juvenile' || specimen.lifeStage === 'subadult'))
    return 'young';
  if (specimen.association === 'composite') return 'composite';
  if (specimen.pathology) return 'sick';
  if (trait.uncertain === 'exclude' && (specimen.identification?.qualifier ?? 'none') !== 'none')
    return 'doubtful';
  return undefined;
}
