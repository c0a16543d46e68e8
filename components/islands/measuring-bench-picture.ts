import {
  PictureRefused,
  preparePicture,
  type PreparedPicture,
} from '../measuring/picture/prepare-picture.ts';
import type { MeasuringBench } from './measuring-bench.ts';

/** Prepares a file and says what was done to it, or why it is not opened. */
export async function openPicture(bench: MeasuringBench, file: File): Promise<PreparedPicture | undefined> {
  try {
    const prepared = await preparePicture(file);
    sayPicture(bench, notesOf(bench, prepared));
    return prepared;
  } catch (error) {
    if (!(error instanceof PictureRefused)) throw error;
    sayPicture(bench, [
      bench.words.phrase(`refused.${error.refusal}`, { name: file.name, found: error.found }),
    ]);
    return undefined;
  }
}

/** Opens the picture that comes with the tool, to try the bench on, with the list of its own lineage where that is here. */
export async function openPractice(bench: MeasuringBench): Promise<void> {
  const response = await fetch(bench.dataset['practice']!);
  const blob = await response.blob();
  await bench.open(new File([blob], 'obm-1183.png', { type: blob.type }), 'obm-1183');
  const choice = bench.dataset['practiceScheme']!;
  const isOpen = bench.record.now.picture?.name === 'obm-1183.png';
  const isOffered = bench.querySelector(`[data-scheme] option[value="${choice}"]`) !== null;
  const [lineage = '', view = ''] = choice.split(' ');
  if (isOpen && isOffered && bench.record.lineage !== lineage) await bench.chooseScheme(lineage, view);
}

/** Says so many things about the picture, each on its line. */
export function sayPicture(bench: MeasuringBench, lines: readonly string[]): void {
  const place = bench.querySelector('[data-picture-notes]')!;
  place.replaceChildren(
    ...lines.map((line) => {
      const paragraph = document.createElement('p');
      paragraph.textContent = line;
      return paragraph;
    }),
  );
}

function notesOf(
  { words }: MeasuringBench,
  { name, width, height, was, changes }: PreparedPicture,
): string[] {
  const megapixels = words.number((was.width * was.height) / 1e6, 0);
  return [
    words.phrase('opened', { name, width, height }),
    ...changes.map((change) =>
      words.phrase(`change.${change}`, { megapixels, width: was.width, height: was.height }),
    ),
  ];
}
