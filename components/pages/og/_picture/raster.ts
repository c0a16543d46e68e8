import sharp from 'sharp';
import type { CompiledLineage } from '../../../../scripts/compile/contract.ts';
import { composeSmall } from '../../../figures/small-plate/compose-small.ts';
import { composeSmallSection } from '../../../figures/section/compose-small.ts';
import { sectionFigure } from '../../../figures/section/section-data.ts';
import { isSectionOnly } from '../../../section/section-view.ts';
import { plateData } from '../../../figures/scene/plate-data.ts';
import { cardWords, textsOf } from './card-words.ts';
import { composeCard, figureSize, type Pens } from './compose-card.ts';
import { penFor, sans, sansStrong, serif } from '../../../figures/letters.ts';

/** The picture of a page as PNG bytes, in a style from `pictureStyle`; the same lineage gives the same bytes. */
export async function cardPicture(
  lineage: CompiledLineage,
  language: string,
  style: string,
): Promise<Buffer> {
  const words = cardWords(lineage, language);
  return raster(cardSvg(lineage, language, await pensFor(textsOf(words)), style));
}

/** The three hands of a picture, cut to the letters of these texts. */
export async function pensFor(texts: readonly string[]): Promise<Pens> {
  const [title, plain, strong] = await Promise.all(
    [serif, sans, sansStrong].map((hand) => penFor(hand, texts)),
  );
  return { serif: title!, sans: plain!, strong: strong! };
}

/** The picture before it is rasterised. */
export function cardSvg(lineage: CompiledLineage, language: string, pens: Pens, style: string): string {
  const trait = lineage.traits.find(({ id }) => id === lineage.about.focus) ?? lineage.traits[0];
  const section = isSectionOnly(lineage) ? lineage.section : undefined;
  const figure = section
    ? composeSmallSection(
        sectionFigure(lineage, section, () => ''),
        figureSize,
      )
    : trait && composeSmall(plateData(lineage, trait, language), figureSize);
  return composeCard(cardWords(lineage, language), figure, pens, style);
}

/** SVG to PNG, at the size that the SVG states. */
export function raster(svg: string): Promise<Buffer> {
  return sharp(Buffer.from(svg)).png({ compressionLevel: 9 }).toBuffer();
}
