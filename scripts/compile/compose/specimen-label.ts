import type { Specimen } from '../schema/index.ts';

/** How a specimen is cited: institution code and catalogue number, or its id where it has no number. */
export function specimenLabel({ id, institutionCode, catalogNumber }: Specimen): string {
  return catalogNumber === undefined ? id : [institutionCode, catalogNumber].filter(Boolean).join(' ');
}
