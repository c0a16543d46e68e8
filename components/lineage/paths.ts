import type { GetStaticPaths } from 'astro';
import { loadLineages } from './load.ts';

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
