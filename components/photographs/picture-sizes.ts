import type { CompiledPicture } from '../../scripts/compile/contract.ts';

/** Widths in px that pages ask for: a card on a phone, a card on a fine screen, the whole width of a page. */
const widths = [480, 960, 1600];
/** What browsers without WebP get. */
const fallbackWidth = 960;

/** One file that is made of a picture. */
export interface PictureSize {
  readonly name: string;
  readonly widthPx: number;
  readonly kind: 'webp' | 'jpeg' | 'png';
}

/** The files that are made of a picture; none is wider than the picture itself. */
export function pictureSizes({ file, width = 0, digest = '' }: CompiledPicture): PictureSize[] {
  const own = [...new Set(widths.map((each) => Math.min(each, width)))];
  const fallback = /\.jpe?g$/i.test(file) ? 'jpeg' : 'png';
  const named = (widthPx: number, kind: PictureSize['kind']) => ({
    name: `${stemOf(file)}.${digest}.${widthPx}.${kind === 'jpeg' ? 'jpg' : kind}`,
    widthPx,
    kind,
  });
  return [...own.map((widthPx) => named(widthPx, 'webp')), named(Math.min(fallbackWidth, width), fallback)];
}

/** The name of a file without folders and ending, in letters that every server takes. */
function stemOf(file: string): string {
  const stem = file
    .split('/')
    .at(-1)!
    .replace(/\.[^.]*$/, '');
  return stem.normalize('NFD').replace(/[^A-Za-z0-9-]+/g, '-') || 'picture';
}
