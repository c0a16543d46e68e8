/** A way of speaking that teaches something false, why, and what to write instead. */
export interface Phrase {
  pattern: RegExp;
  why: string;
}

const ladder = 'it makes a row of living things into a ladder (Gregory 2008, doi 10.1007/s12052-008-0035-x)';
const chain = 'no fossil is a link of a chain: write relative, or transitional feature (Mead 2009)';
const descent =
  'named fossils are tips, not one another’s ancestors (MacDonald & Wiley 2012): write related to, or has, where a forebear had';
const frozen =
  'every living animal has been evolving as long as every other: say which feature has changed little';
const rank = 'branches are not higher or lower (Gregory 2008): say which feature is older or newer';
const goal = 'lineages have no goal (Gregory 2008): say what changed, and when';

/** Phrases to think about again, by language of the story. Ordinary anatomical words are not among them. */
export const phrases: Readonly<Record<string, readonly Phrase[]>> = {
  en: [
    { pattern: /\bmissing[\s-]links?\b/giu, why: chain },
    { pattern: /\bevolv(?:ed|es|ing)\s+(?:in)?to\b(?=\s+(?:an?|the|modern|today)\b)/giu, why: descent },
    { pattern: /\b(?:turned|morphed|transformed)\s+into\b/giu, why: descent },
    { pattern: /\b(?:direct\s+)?ancestors?\s+of\b/giu, why: descent },
    { pattern: /\bliving\s+fossils?\b/giu, why: frozen },
    { pattern: /\b(?:more|less|most|highly)\s+evolved\b/giu, why: ladder },
    {
      pattern:
        /\b(?:primitive|advanced|higher|lower)\s+(?:animals?|mammals?|species|forms?|creatures?|relatives?|members?|skulls?)\b/giu,
      why: rank,
    },
    {
      pattern:
        /\b(?:evolutionary\s+ladder|ladder\s+of\s+(?:life|evolution)|great\s+chain|march\s+of\s+progress|main\s+line)\b/giu,
      why: ladder,
    },
    {
      pattern:
        /\b(?:on\s+its\s+way\s+to|destined\s+to|in\s+order\s+to\s+become|trying\s+to\s+become|on\s+the\s+way\s+to\s+becoming)\b/giu,
      why: goal,
    },
  ],
  es: [
    { pattern: /\beslab(?:ón|ones)\s+perdidos?\b/giu, why: chain },
    {
      pattern: /\b(?:evolucionó|evolucionaron|evoluciona)\s+(?:hasta\s+convertirse|hacia|a|en)\b/giu,
      why: descent,
    },
    { pattern: /\bse\s+(?:convirti(?:ó|eron)|transform(?:ó|aron))\s+en\b/giu, why: descent },
    { pattern: /\bantepasados?\s+(?:directos?\s+)?(?:de|del)\b/giu, why: descent },
    { pattern: /\bf[óo]sil(?:es)?\s+vivientes?\b/giu, why: frozen },
    { pattern: /\b(?:más|menos|muy)\s+evolucionad[oa]s?\b/giu, why: ladder },
    {
      pattern:
        /\b(?:animal(?:es)?|mamíferos?|especies?|formas?|criaturas?|parientes?|cráneos?)\s+(?:primitiv|avanzad|superior|inferior)\w*/giu,
      why: rank,
    },
    {
      pattern:
        /\b(?:escalera\s+(?:evolutiva|de\s+la\s+(?:vida|evolución))|gran\s+cadena|marcha\s+del\s+progreso|línea\s+principal)\b/giu,
      why: ladder,
    },
    { pattern: /\b(?:en\s+camino\s+de\s+convertirse|destinad[oa]s?\s+a)\b/giu, why: goal },
  ],
  // Words may carry a conjunction or article in front, so nothing is asked of the letter before.
  ar: [
    { pattern: /الحلق(?:ة|ات)\s+المفقودة/gu, why: chain },
    { pattern: /تطو[ّ]?ر(?:ت)?\s+إلى/gu, why: descent },
    { pattern: /تحو[ّ]?ل(?:ت)?\s+إلى/gu, why: descent },
    { pattern: /(?:السلف|الجد[ّ]?|أسلاف|سلف)\s+(?:ال)?مباشر(?:ة|ين|ون)?/gu, why: descent },
    { pattern: /(?:أحافير|أحفورة|أحفورات|متحج[ّ]?رات|متحج[ّ]?رة)\s+(?:ال)?حي[ّ]?ة/gu, why: frozen },
    { pattern: /(?:أكثر|أقل[ّ]?|الأكثر)\s+تطو[ّ]?ر(?:ًا|اً|ا)/gu, why: ladder },
    {
      pattern:
        /(?:الحيوانات|حيوانات|الثدييات|ثدييات|الأنواع|أنواع|الأشكال|أشكال|الكائنات|كائنات)\s+(?:ال)?(?:بدائية|راقية|دنيا|عليا|متقد[ّ]?مة)/gu,
      why: rank,
    },
    { pattern: /سل[ّ]?م\s+(?:الحياة|التطو[ّ]?ر)/gu, why: ladder },
    { pattern: /في\s+طريق(?:ه|ها|هم)\s+إلى\s+أن\s+(?:يصبح|تصبح|يصبحوا)/gu, why: goal },
  ],
};
