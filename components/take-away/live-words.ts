import { interfaceLanguages, type MessageKey } from '../messages/say.ts';

const keys: readonly MessageKey[] = [
  'value.inferred',
  'value.spoken.inferred',
  'value.spoken.bounded',
  'value.between',
  'leftOut.sentence',
  'takeAway.inside',
  'takeAway.outside',
  'takeAway.open',
  'takeAway.rests',
  'takeAway.share',
  'takeAway.rest',
  'takeAway.now',
  'takeAway.nowOpen',
  'takeAway.tooFew',
  'takeAway.hidden',
  'takeAway.hide',
  'takeAway.show',
  'takeAway.saidHidden',
  'takeAway.saidBack',
  'takeAway.saidAllBack',
];

/** The messages that the browser fills, in the page's language, else in English. */
export function browserWords(language: string): Record<string, string> {
  const [own, english] = [interfaceLanguages[language] ?? {}, interfaceLanguages['en']!];
  return Object.fromEntries(keys.map((key) => [key, own[key] ?? english[key]!]));
}
