import { href } from '../href.ts';

/** The address of the shelf of all lineages in a language of the interface; English stands at the root of the site. */
export function shelfAddress(language: string): string {
  return language === 'en' ? href() : href('lineages', language);
}
