declare module 'subset-font' {
  /** Cuts a font to the given letters; `variationAxes` fixes or limits the axes of a variable one. */
  export default function subsetFont(
    font: Buffer,
    letters: string,
    options: {
      targetFormat: 'woff2' | 'woff' | 'sfnt';
      variationAxes?: Record<string, number | { min: number; max: number }>;
    },
  ): Promise<Buffer>;
}
