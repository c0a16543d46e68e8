import { normalReach } from '../figures/section/section-data.ts';
import { figures } from '../messages/direction.ts';
import { levelName, type SectionView } from './section-view.ts';

/** The rank tests in words, with what they cannot decide; undefined with fewer than three levels. */
export function findRankWords({ view: { voice, language }, section }: SectionView): string | undefined {
  const { ranks } = section;
  if (!ranks || ranks.kendall.coefficient === null || ranks.spearman.coefficient === null) return undefined;
  const signed = (value: number) =>
    figures(`${value < 0 ? '−' : ''}${voice.number(Math.abs(value), 2)}`, language);
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
  const { voice, language } = view;
  if (!change) return [];
  const number = (value: number, decimals: number) =>
    `${value < 0 ? '−' : ''}${voice.number(Math.abs(value), decimals)}`;
  const plusMinus = (value: number, error: number, decimals: number) =>
    figures(
      voice.say('value.plusMinus', {
        value: number(value, decimals),
        error: voice.number(normalReach * error, decimals),
      }),
      language,
    );
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
    haldanes: figures(scientific(change.haldanes.rate, voice.number), language),
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
