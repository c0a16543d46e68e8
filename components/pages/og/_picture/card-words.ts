import type { CompiledLineage } from '../../../../scripts/compile/contract.ts';
import { cardCounts, type CardCount } from '../../../figures/small-plate/card-counts.ts';
import { voiceOf } from '../../../messages/say.ts';
import { isSectionOnly } from '../../../section/section-view.ts';

/** What a picture says, in the language of its page. */
export interface CardWords {
  /** Present when everything is invented. */
  invented?: string;
  title: string;
  question: string;
  /** What the figure shows. */
  caption: string;
  today: string;
  counts: CardCount[];
}

/** The words of one lineage's picture; a status that no animal has is left out. */
export function cardWords(lineage: CompiledLineage, language: string): CardWords {
  const { about } = lineage;
  const voice = voiceOf(language);
  const text = (texts: Record<string, string>) => texts[language] ?? texts[about.languages[0]!] ?? '';
  const captionOf = (trait: string) =>
    isSectionOnly(lineage)
      ? voice.say('section.figure', { trait, section: text(lineage.section!.name) })
      : voice.say('figure.title', { trait });
  const trait = lineage.traits.find(({ id }) => id === about.focus) ?? lineage.traits[0];
  return {
    ...(about.invented && { invented: voice.say('invented') }),
    title: text(about.title),
    question: text(about.question),
    caption: trait ? captionOf(text(trait.label)) : '',
    today: isSectionOnly(lineage) ? '' : voice.say('tree.today'),
    counts: cardCounts(lineage, voice),
  };
}

/** Every text of a picture, for cutting faces to its letters. */
export function textsOf(words: CardWords): string[] {
  const { invented = '', title, question, caption, today, counts } = words;
  return [invented, title, question, caption, today, ...counts.map(({ text }) => text), '…', '?'];
}
