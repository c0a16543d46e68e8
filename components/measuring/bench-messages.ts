import type { Voice } from '../messages/say.ts';
import en from '../messages/en.json' with { type: 'json' };

/** The bench's messages in one language, by key without its `bench.`: what the page hands to the script. */
export function benchMessages(
  { language }: Voice,
  messages: Readonly<Record<string, Partial<Record<string, string>>>>,
) {
  const keys = Object.keys(en).filter((key) => key.startsWith('bench.')) as (keyof typeof en)[];
  return Object.fromEntries(keys.map((key) => [key.slice(6), messages[language]?.[key] ?? en[key]]));
}
