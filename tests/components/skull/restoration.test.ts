import { describe, expect, test } from 'vitest';
import { drawingNotes, foundPoints, isRestored } from '../../../components/figures/skull-words.ts';
import { restorationOf } from '../../../components/islands/skull-restoration.ts';
import type { LineageView } from '../../../components/lineage/view.ts';
import type { CompiledDrawing } from '../../../scripts/compile/contract.ts';

/** A drawing of which so many of its points were found. */
function drawingWith(found: number, all: number): CompiledDrawing {
  const points = Object.fromEntries(
    Array.from({ length: all }, (_, index) => [
      `point-${index}`,
      { at: [index, 0] as [number, number], basis: index < found ? 'digitised' : 'relatives' } as const,
    ]),
  );
  return { taxon: 'a', trait: 't', specimens: ['x-1'], points, elements: [], breaks: [], broken: false };
}

const view = {
  voice: {
    say: (key: string, places?: { specimens: string }) => (places ? `${key} ${places.specimens}` : key),
  },
  findSpecimen: (id: string) => ({ mirrored: id === 'turned', label: id === 'turned' ? 'Turned 7' : id }),
} as unknown as LineageView; // what the notes ask of it

describe('how much of a skull was found', () => {
  test('is counted by its landmarks beside every drawing', () => {
    expect(foundPoints(drawingWith(17, 45))).toBe(17);
  });

  test('is all of it where no point is worked out', () => {
    expect([isRestored(drawingWith(45, 45)), isRestored(drawingWith(44, 45))]).toEqual([false, true]);
  });
});

describe('what a skull shows', () => {
  test('is bone alone at first where it is a fragment, and where the step asks for it', () => {
    expect(restorationOf('a', 'figure', true, undefined)).toBe('bone');
    expect(restorationOf('a', 'bone', false, undefined)).toBe('bone');
    expect(restorationOf('a', 'measurement', false, undefined)).toBe('restored');
  });

  test('is what the visitor asked for, of that animal alone', () => {
    const wish = { taxon: 'a', restoration: 'restored' } as const;
    expect(restorationOf('a', 'bone', true, wish)).toBe('restored');
    expect(restorationOf('b', 'bone', true, wish)).toBe('bone');
  });
});

test('a side that was turned over is said, and so is a scale that is not known', () => {
  const drawing = drawingWith(3, 3);
  expect(drawingNotes(view, drawing)).toEqual(['drawing.noScale']);
  expect(drawingNotes(view, { ...drawing, mmPerUnit: 1.2 })).toEqual([]);
  expect(drawingNotes(view, { ...drawing, specimens: ['x-1', 'turned'], mmPerUnit: 1.2 })).toEqual([
    'drawing.mirrored Turned 7',
  ]);
});
