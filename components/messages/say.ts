import ar from './ar.json' with { type: 'json' };
import en from './en.json' with { type: 'json' };
import es from './es.json' with { type: 'json' };
import { fill } from './fill.ts';
import { numbersIn } from './number.ts';

/** A message that the interface can say. Keys of plural forms carry `_one` and `_other`. */
export type MessageKey = keyof typeof en;

/** The interface languages. A page in any other language falls back to English, key by key. */
export const interfaceLanguages: Record<string, Partial<Record<string, string>>> = { en, es, ar };

/** Whether a code that comes with the records has a message of its own. */
export function isMessage(key: string): key is MessageKey {
  return Object.hasOwn(en, key);
}

export type Arguments = Record<string, string | number>;

/** One language's voice. */
export interface Voice {
  language: string;
  /** The message with its places filled; English where the language lacks it. */
  say(key: MessageKey | `${string}_`, places?: Arguments): string;
  /** Whether it has a message for a code. */
  knows(key: string): key is MessageKey;
  /** A number with the language's separators. */
  number(value: number, decimals: number): string;
}

/** The voice of a language. `say('evidence.meanOf_', { count })` picks the plural form for `count`. */
export function voiceOf(language: string): Voice {
  const own = interfaceLanguages[language] ?? {};
  const plural = new Intl.PluralRules(language);
  return {
    language,
    knows: isMessage,
    say(key, places = {}) {
      const whole = key.endsWith('_')
        ? `${key}${plural.select(Number(places['count'])) === 'one' ? 'one' : 'other'}`
        : key;
      const message = own[whole] ?? (en as Record<string, string>)[whole];
      if (message === undefined) throw new Error(`unknown message: "${whole}"`);
      return fill(message, language, (name) => {
        const value = places[name];
        if (value === undefined) throw new Error(`message "${whole}" needs a value for {${name}}`);
        return String(value);
      });
    },
    number: numbersIn(language),
  };
}
