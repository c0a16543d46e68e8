import { href } from '../href.ts';
import { methodsLanguage } from './texts.ts';

/** Where the methods stand for a reader of a language; English has the bare address. */
export function methodsAddress(language: string): string {
  const tag = methodsLanguage(language);
  return href('methods', tag === 'en' ? '' : tag);
}
