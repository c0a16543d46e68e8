import type {
  CompiledLineage,
  CompiledSpecimen,
  CompiledTaxon,
  CompiledTrait,
  CompiledValue,
  Texts,
} from '../../scripts/compile/contract.ts';
import { voiceOf, type Voice } from '../messages/say.ts';
import { valueText, type ValueText } from '../messages/value-text.ts';

/** A compiled lineage as one page sees it: in one language, with one trait in view. */
export interface LineageView {
  lineage: CompiledLineage;
  language: string;
  voice: Voice;
  trait: CompiledTrait;
  /** The page is not the explainer itself: links to what stands there name its address. */
  isApart?: boolean;
  /** The text in the page's language, else in the lineage's first. */
  text(texts: Texts | undefined): string;
  requireTaxon(id: string): CompiledTaxon;
  findValue(taxon: string): CompiledValue | undefined;
  /** Printed and spoken value of a taxon; `not known` for one without an entry. */
  printed(taxon: string): ValueText;
  findSpecimen(id: string): CompiledSpecimen | undefined;
}

/** Makes the view of a page, of the trait that it opens with unless another is wanted. Throws when the lineage has no trait at all. */
export function lineageView(
  lineage: CompiledLineage,
  language: string,
  wanted = lineage.about.focus,
): LineageView {
  const trait = lineage.traits.find((each) => each.id === wanted) ?? lineage.traits[0];
  if (!trait) throw new Error(`lineage "${lineage.lineage}" has no trait`);
  const voice = voiceOf(language);
  const taxa = new Map(lineage.taxa.map((taxon) => [taxon.id, taxon]));
  const values = new Map(trait.values.map((value) => [value.taxon, value]));
  const specimens = new Map(lineage.specimens.map((specimen) => [specimen.id, specimen]));
  return {
    lineage,
    language,
    voice,
    trait,
    text: (texts) => texts?.[language] ?? texts?.[lineage.about.languages[0]!] ?? '',
    requireTaxon(id) {
      const taxon = taxa.get(id);
      if (!taxon) throw new Error(`unknown taxon: "${id}"`);
      return taxon;
    },
    findValue: (id) => values.get(id),
    printed(id) {
      const value = values.get(id);
      const unknown = voice.say('value.unknown');
      return value ? valueText(value, voice) : { printed: unknown, spoken: unknown, range: '' };
    },
    findSpecimen: (id) => specimens.get(id),
  };
}

/** Age of an animal in words for galleries and classes: `43.0–40.4 million years ago`, `living today`. */
export function ageText(view: LineageView, taxon: CompiledTaxon): string {
  if (taxon.living && (taxon.finds.first ?? 0) === 0) return view.voice.say('age.living');
  return taxon.age ? view.voice.say('age.span', { text: taxon.age.text }) : '';
}

/** Taxa in the order of the table: oldest first find first, living last. */
export function taxaByAge(lineage: CompiledLineage): CompiledTaxon[] {
  const first = (taxon: CompiledTaxon) => taxon.finds.first ?? taxon.age?.from ?? 0;
  return [...lineage.taxa].sort((a, b) => first(b) - first(a) || a.id.localeCompare(b.id));
}

/** The word of a status for visitors: measured, at least or at most, worked out from relatives, not known. */
export function statusWord(view: LineageView, value: CompiledValue): string {
  const onlyFromAbove = value.limits?.atMost !== undefined && value.limits.atLeast === undefined;
  return view.voice.say(
    value.status === 'bounded' && onlyFromAbove ? 'status.bounded.atMost' : `status.${value.status}`,
  );
}
