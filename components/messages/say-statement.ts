import type { Statement } from '../../analysis/statements/index.ts';
import type { Arguments, Voice } from './say.ts';

/**
 * The sentence of a statement: its code is the message, and its numbers are printed with their own decimals, `nameDecimals`, or
 * with those of all; a unit is printed as its sign, per cent right behind its figure in English. A range of two numbers,
 * `nameLow` and `nameHigh`, is also there as one place, `{name}`. Further places, such as names, are handed in.
 */
export function sayStatement({ code, args }: Statement, voice: Voice, more: Arguments = {}): string {
  const decimals = Number(args['decimals'] ?? 0);
  const places: Arguments = { ...more };
  for (const [name, value] of Object.entries(args))
    places[name] =
      typeof value === 'number' && !counts.has(name)
        ? voice.number(value, Number(args[`${name}Decimals`] ?? decimals))
        : value;
  const unit = `unit.${args['unit']}`;
  if (args['unit'] !== undefined) places['unit'] = voice.knows(unit) ? voice.say(unit) : '';
  for (const name of ['middle', 'range', 'ends']) {
    if (args[`${name}Low`] === undefined) continue;
    const own = Number(args[`${name}Decimals`]);
    const [low, high] = ['Low', 'High'].map((end) => voice.number(Number(args[`${name}${end}`]), own));
    places[name] = `${low}–${high}`;
  }
  // a code of the compiler is a message of every language; a test holds it
  const said = voice.say(code as Parameters<Voice['say']>[0], places);
  return voice.language.startsWith('en') ? said.replaceAll(' %', '%') : said;
}

/** Numbers that count things and are printed as they are. */
const counts = new Set(['inside', 'count', 'trees', 'rules', 'ages', 'margin', 'specimens', 'beds']);
