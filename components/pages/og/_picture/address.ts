import { href } from '../../../href.ts';

/** Size of every picture in pixels. */
export const pictureSize = { width: 1200, height: 630 };

/** The address of a page's picture under the base path of the site. */
export function pictureAddress(lineage: string, language: string): string {
  return `${href('og')}${lineage}.${language}.png`;
}
