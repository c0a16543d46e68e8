import type { GetStaticPaths } from 'astro';
import { areCardsApart } from '../evidence/address.ts';
import { loadLineages } from './load.ts';
import { lineageView } from './view.ts';

/** One page a lineage, in its first language: `/reed-trunks/`. */
export const firstLanguagePaths = (async () =>
  (await loadLineages()).map(({ lineage, about }) => ({
    params: { lineage },
    props: { id: lineage, language: about.languages[0]! },
  }))) satisfies GetStaticPaths;

/** One page for each further language: `/reed-trunks/es/`. */
export const otherLanguagePaths = (async () =>
  (await loadLineages()).flatMap(({ lineage, about }) =>
    about.languages
      .slice(1)
      .map((language) => ({ params: { lineage, language }, props: { id: lineage, language } })),
  )) satisfies GetStaticPaths;

/** One file a lineage. */
export const lineagePaths = (async () =>
  (await loadLineages()).map(({ lineage }) => ({ params: { lineage } }))) satisfies GetStaticPaths;

/** The page of each card, in a lineage's first language, where cards are pages of their own. */
export const firstLanguageCards = (async () =>
  (await cards()).flatMap(({ lineage, taxon, languages: [language] }) => ({
    params: { lineage, taxon },
    props: { id: lineage, language: language!, taxon },
  }))) satisfies GetStaticPaths;

/** The same in each further language. */
export const otherLanguageCards = (async () =>
  (await cards()).flatMap(({ lineage, taxon, languages: [, ...others] }) =>
    others.map((language) => ({
      params: { lineage, language, taxon },
      props: { id: lineage, language, taxon },
    })),
  )) satisfies GetStaticPaths;

/** All cards that are pages of their own. */
async function cards(): Promise<{ lineage: string; taxon: string; languages: string[] }[]> {
  const views = (await loadLineages()).map((lineage) => lineageView(lineage, lineage.about.languages[0]!));
  return views.filter(areCardsApart).flatMap(({ lineage, trait }) =>
    trait.values.map(({ taxon }) => ({
      lineage: lineage.lineage,
      taxon,
      languages: lineage.about.languages,
    })),
  );
}

/** One file for each lineage that has a sampled section. */
export const sectionPaths = (async () =>
  (await loadLineages()).flatMap(({ lineage, section }) =>
    section ? [{ params: { lineage } }] : [],
  )) satisfies GetStaticPaths;
