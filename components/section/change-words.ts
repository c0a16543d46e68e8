import { normalReach } from '../figures/section/section-data.ts';
import { levelName, type SectionView } from './section-view.ts';

/** The rank tests in words, with what they cannot decide; undefined with fewer than three levels. */
export function findRankWords({ view: { voice }, section }: SectionView): string | undefined {
  const { ranks } = section;
  if (!ranks || ranks.kendall.coefficient === null || ranks.spearman.coefficient === null) return undefined;
  const signed = (value: number) => voice.number(value, 2);
  const p = (value: number | null) => (value === null ? '–' : voice.number(value, value < 0.1 ? 3 : 2));
  return voice.say('section.ranks', {
    tau: signed(ranks.kendall.coefficient),
    pTau: p(ranks.kendall.pTwoSided),
    rho: signed(ranks.spearman.coefficient),
    pRho: p(ranks.spearman.pTwoSided),
  });
}

/** Change from the oldest level to the youngest with its interval, in darwins and, with a sourced generation, in haldanes. */
export function rateWords(shown: SectionView): string[] {
  const { view, section } = shown;
  const { change, generation } = section;
  const { voice } = view;
  if (!change) return [];
  const plusMinus = (value: number, error: number, decimals: number) =>
    voice.say('value.plusMinus', {
      value: voice.number(value, decimals),
      error: voice.number(normalReach * error, decimals),
    });
  const rate = voice.say('section.rate', {
    from: levelName(shown, change.from),
    to: levelName(shown, change.to),
    interval: plusMinus(change.intervalMyr, change.intervalSigmaMyr, 2),
    darwins: plusMinus(change.darwins.rate, change.darwins.standardError, 3),
  });
  if (!change.haldanes || !generation) return [rate];
  const source = view.lineage.references.find(({ key }) => key === generation.source);
  const haldanes = voice.say('section.haldanes', {
    years: voice.number(generation.years, 1),
    source: source?.short ?? generation.source,
    haldanes: scientific(change.haldanes.rate, voice.number),
    generations: voice.number(Number(change.haldanes.interval.toPrecision(2)), 0),
  });
  return [rate, haldanes];
}

/** A small number as `2.5 × 10⁻⁶`. */
function scientific(value: number, print: (value: number, decimals: number) => string): string {
  if (value === 0) return print(0, 0);
  const power = Math.floor(Math.log10(Math.abs(value)));
  const digits = [...String(power)].map((sign) => superscripts[sign] ?? sign).join('');
  const lead = `${value < 0 ? '−' : ''}${print(Math.abs(value) / 10 ** power, 1)}`;
  return `${lead} × 10${digits}`;
}

const superscripts: Readonly<Record<string, string>> = Object.fromEntries(
  [...'0123456789-'].map((sign, index) => [sign, [...'⁰¹²³⁴⁵⁶⁷⁸⁹⁻'][index]!]),
);
