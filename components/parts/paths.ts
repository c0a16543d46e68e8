import type { GetStaticPaths } from 'astro';
import { loadLineages } from '../lineage/load.ts';
import { lineageView } from '../lineage/view.ts';
import { isSectionOnly } from '../section/section-view.ts';
import { partsOf } from './parts-of.ts';

/** The pages of all parts in each lineage's first language. */
export const firstLanguageParts = (async () =>
  (await parts()).flatMap(({ lineage, part, languages: [language] }) => ({
    params: { lineage, part },
    props: { id: lineage, language: language!, part },
  }))) satisfies GetStaticPaths;

/** The same in each further language. */
export const otherLanguageParts = (async () =>
  (await parts()).flatMap(({ lineage, part, languages: [, ...others] }) =>
    others.map((language) => ({
      params: { lineage, language, part },
      props: { id: lineage, language, part },
    })),
  )) satisfies GetStaticPaths;

/** A lineage that is only a sampled section has a page of another kind, and no parts. */
async function parts() {
  return (await loadLineages())
    .filter((lineage) => !isSectionOnly(lineage))
    .flatMap((lineage) =>
      partsOf(lineageView(lineage, lineage.about.languages[0]!)).map((part) => ({
        lineage: lineage.lineage,
        part,
        languages: lineage.about.languages,
      })),
    );
}
