import type { PlateLayout } from './layout.ts';
import type { Scales } from './scales.ts';
import { path, text, type Mark } from './scene.ts';

/** A bar is at most this share of the measured line, so that it stands clear of the ruler's words. */
const longestShare = 0.42;

/**
 * The bar of a whole number of millimetres beside a skull, from its real size; nothing where that is not known. The length is
 * the longest of 1, 2 or 5 times a power of ten that has room.
 */
export function scaleBarMarks(
  mmPerUnit: number | undefined,
  layout: PlateLayout,
  scales: Scales,
  mark: (role: string, shape: Mark['shape']) => Mark,
): Mark[] {
  const lengthMm = mmPerUnit === undefined ? undefined : barLengthMm(mmPerUnit * 100 * longestShare);
  if (mmPerUnit === undefined || lengthMm === undefined) return [];
  const { right, y } = layout.scaleBar;
  const left = right - (lengthMm / mmPerUnit) * scales.unit;
  const tick = 3.5 * layout.markScale;
  const bar = path`M${left} ${y}H${right}M${left} ${y - tick}V${y + tick}M${right} ${y - tick}V${y + tick}`;
  const words = text((left + right) / 2, y - tick - 3, layout.fontSize * 0.92, `${lengthMm} mm`, 'middle');
  return [mark('scale-bar', { kind: 'path', d: bar }), mark('scale-word', words)];
}

/** The longest of 1, 2 or 5 times a power of ten that is no longer than the room, in mm; undefined where there is none. */
export function barLengthMm(roomMm: number): number | undefined {
  if (!(roomMm > 0) || !Number.isFinite(roomMm)) return undefined;
  const decade = 10 ** Math.floor(Math.log10(roomMm));
  const share = [5, 2, 1].find((each) => each * decade <= roomMm * (1 + 1e-9)) ?? 1;
  return Number((share * decade).toPrecision(1));
}
