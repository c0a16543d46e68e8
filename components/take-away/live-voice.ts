import { fill } from '../messages/fill.ts';
import { numbersIn } from '../messages/number.ts';
import type { MessageKey, Voice } from '../messages/say.ts';

/** A voice that speaks only the messages of a data block, so that the browser need not load those of every language. */
export function liveVoice(language: string, words: Readonly<Record<string, string>>): Voice {
  return {
    language,
    knows: (key): key is MessageKey => Object.hasOwn(words, key),
    say(key, places = {}) {
      const message = words[key];
      if (message === undefined) throw new Error(`message not on this page: "${key}"`);
      return fill(message, language, (name) => String(places[name]));
    },
    number: numbersIn(language),
  };
}
