/** Pixels that a picture may have; a larger one is drawn smaller. */
export const mostPixels = 100_000_000;

/** The size at which a picture is measured on: its own, or smaller in the same proportion where it has too many px. */
export function scaledSize(
  width: number,
  height: number,
): { width: number; height: number; scaled: boolean } {
  if (width * height <= mostPixels) return { width, height, scaled: false };
  const share = Math.sqrt(mostPixels / (width * height));
  return {
    width: Math.max(1, Math.floor(width * share)),
    height: Math.max(1, Math.floor(height * share)),
    scaled: true,
  };
}
