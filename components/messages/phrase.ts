import type { Statement } from '../../analysis/statements/index.ts';
import type { MessageKey, Voice } from './say.ts';
import { sayStatement } from './say-statement.ts';

/** What a trait's axis runs between, in words: its marks at 0 and at 100. */
export interface AxisWords {
  start: string;
  end: string;
}

/** A place on the way between the marks at 0 and 100 in words; its arguments are ids of shares. */
export function sayPlace({ code, args }: Statement, axis: AxisWords, voice: Voice): string {
  const name = (id: string | number | undefined) =>
    id === undefined ? '' : voice.say(`phrase.share.${id}` as MessageKey); // every share has a message; a test holds it
  const places = { ...axis, low: name(args['low']), high: name(args['high']) };
  return contracted(sayStatement({ code, args: {} }, voice, places), voice.language);
}

/** Spanish joins its preposition and article: 'de el' is 'del', 'a el' is 'al'. */
function contracted(text: string, language: string): string {
  if (!language.startsWith('es')) return text;
  return text.replace(/\bde el\b/g, 'del').replace(/\ba el\b/g, 'al');
}
