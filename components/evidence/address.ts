/** The id of an evidence card on its page: one address for each taxon and trait. */
export function evidenceId(taxon: string, trait: string): string {
  return `evidence-${trait}-${taxon}`;
}
