import ar from './text.ar.json' with { type: 'json' };
import en from './text.en.json' with { type: 'json' };
import es from './text.es.json' with { type: 'json' };

/** The words of the methods page, in each language that it is written in. */
export const methodsTexts = { en, es, ar };
export type MethodsLanguage = keyof typeof methodsTexts;

/** The language in which a page leads to the methods: its own where they are written in it, else English. */
export function methodsLanguage(language: string): MethodsLanguage {
  return Object.hasOwn(methodsTexts, language) ? (language as MethodsLanguage) : 'en';
}
