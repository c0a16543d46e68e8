import type { CompiledLineage, Status } from '../../../../scripts/compile/contract.ts';
import { voiceOf } from '../../../messages/say.ts';

/** What a picture says, in the language of its page. */
export interface CardWords {
  /** Present when everything is invented. */
  invented?: string;
  title: string;
  question: string;
  /** What the figure shows. */
  caption: string;
  today: string;
  counts: { status: Status; text: string }[];
}

const statuses: readonly Status[] = ['measured', 'bounded', 'inferred', 'unknown'];

/** The words of one lineage's picture; a status that no animal has is left out. */
export function cardWords(lineage: CompiledLineage, language: string): CardWords {
  const { about } = lineage;
  const voice = voiceOf(language);
  const text = (texts: Record<string, string>) => texts[language] ?? texts[about.languages[0]!] ?? '';
  const trait = lineage.traits.find(({ id }) => id === about.focus) ?? lineage.traits[0];
  const count = (status: Status) => trait?.values.filter((value) => value.status === status).length ?? 0;
  return {
    ...(about.invented && { invented: voice.say('invented') }),
    title: text(about.title),
    question: text(about.question),
    caption: trait ? voice.say('figure.title', { trait: text(trait.label) }) : '',
    today: voice.say('tree.today'),
    counts: statuses
      .filter((status) => count(status) > 0)
      .map((status) => ({ status, text: voice.say(`index.count.${status}`, { count: count(status) }) })),
  };
}

/** Every text of a picture, for cutting faces to its letters. */
export function textsOf(words: CardWords): string[] {
  const { invented = '', title, question, caption, today, counts } = words;
  return [invented, title, question, caption, today, ...counts.map(({ text }) => text), '…', '?'];
}
