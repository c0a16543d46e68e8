import type { CompiledLineage } from '../../scripts/compile/contract.ts';
import { href } from '../href.ts';

/** The address of a page of a lineage; its first language stands in no address: `/reed-trunks/data/`, `/reed-trunks/es/data/`. */
export function pageAddress({ lineage, about }: CompiledLineage, language: string, ...at: string[]): string {
  return href(lineage, language === about.languages[0] ? '' : language, ...at);
}

/** The same page in every language of its lineage: language to address. */
export function pageInEveryLanguage(lineage: CompiledLineage, ...at: string[]): Record<string, string> {
  return Object.fromEntries(
    lineage.about.languages.map((language) => [language, pageAddress(lineage, language, ...at)]),
  );
}
