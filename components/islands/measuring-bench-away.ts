import type { BenchRecord, Measured } from '../measuring/bench-record.ts';
import type { BenchScheme } from '../measuring/bench-scheme.ts';
import type { BenchWords } from '../measuring/bench-words.ts';
import type { MeasuringBench } from './measuring-bench.ts';
import { copyText, download } from './measuring-bench-take.ts';
import { missingOf } from '../measuring/missing.ts';
import { recordText, schemeText, sheetText } from '../measuring/sheet-text.ts';

/** The texts that are taken away, by name; the scheme only where the names are the user's own. */
export type AwayTexts = Readonly<Record<'sheet' | 'record' | 'scheme', string>>;

/** What each text is called as a file. */
const awayFiles: Readonly<Record<keyof AwayTexts, string>> = {
  sheet: 'landmarks.csv',
  record: 'specimens-part.yaml',
  scheme: 'scheme-part.yaml',
};

/** The texts of the finished specimens and of the one in hand, if that is whole enough. */
export function awayTexts(record: BenchRecord, scheme: BenchScheme): AwayTexts {
  const landmarks = scheme.landmarks.map(({ id }) => id);
  const ready = missingOf(record, landmarks).codes.length === 0;
  const others = record.finished.filter(({ specimen }) => specimen !== record.now.specimen);
  const specimens: Measured[] = [...others, ...(ready ? [record.now] : [])];
  if (specimens.length === 0) return { sheet: '', record: '', scheme: '' };
  return {
    sheet: sheetText(specimens, landmarks),
    record: recordText(specimens, record.view),
    scheme: scheme.lineage === '' ? schemeText(scheme, record.view) : '',
  };
}

/** Copies one of the texts, or downloads it, and says how the copy went. */
export async function takeAway(
  bench: MeasuringBench,
  how: 'copy' | 'download',
  what: keyof AwayTexts,
): Promise<void> {
  const text = awayTexts(bench.record, bench.scheme)[what];
  if (how === 'download') return download(new Blob([text], { type: 'text/plain' }), awayFiles[what]);
  const copied = await copyText(text);
  setText(bench, '[data-copied]', bench.words.phrase(copied ? 'away.copied' : 'away.not-copied'));
}

/** Shows what can be taken away, what is still missing for it, and how many specimens were put aside. */
export function showAway(
  root: HTMLElement,
  record: BenchRecord,
  scheme: BenchScheme,
  words: BenchWords,
): void {
  const texts = awayTexts(record, scheme);
  for (const part of root.querySelectorAll<HTMLElement>('[data-away]')) {
    const text = texts[part.dataset['away'] as keyof AwayTexts];
    part.hidden = part.dataset['away'] === 'scheme' && scheme.lineage !== '';
    part.querySelector('pre')!.textContent = text;
    for (const button of part.querySelectorAll('button')) button.disabled = text === '';
  }
  const missing = missingOf(
    record,
    scheme.landmarks.map(({ id }) => id),
  );
  const said = [
    ...missing.codes.map((code) => words.phrase(`away.missing.${code}`)),
    ...(missing.points > 0 ? [words.count('away.missing.points', missing.points)] : []),
  ];
  setText(
    root,
    '[data-missing]',
    said.length > 0 ? words.phrase('away.missing', { what: said.join('; ') }) : '',
  );
  setText(
    root,
    '[data-aside]',
    record.finished.length > 0 ? words.count('aside', record.finished.length) : '',
  );
  root.querySelector<HTMLButtonElement>('[data-do="finish"]')!.disabled = missing.codes.length > 0;
}

function setText(root: HTMLElement, selector: string, text: string): void {
  const place = root.querySelector(selector)!;
  if (place.textContent !== text) place.textContent = text;
}
