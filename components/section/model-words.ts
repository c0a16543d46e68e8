import type { CompiledSection } from '../../scripts/compile/contract.ts';
import { figures } from '../messages/direction.ts';
import { isMessage, type Voice } from '../messages/say.ts';
import type { SectionView } from './section-view.ts';

type Model = CompiledSection['models']['joint'][number];

/** A weight as a whole per cent, `82%`; those below one and above 99 are told as such, because no weight is none or all. */
export function weightPercent(weight: number | null, voice: Voice): string {
  if (weight === null) return '–';
  const percent = Math.round(100 * weight);
  if (percent < 1) return figures(`< ${voice.number(1, 0)}%`, voice.language);
  return percent > 99 ? figures(`> ${voice.number(99, 0)}%`, voice.language) : `${voice.number(percent, 0)}%`;
}

/** What may be said of the section, in one or two sentences. */
export function verdictWords({ view: { voice }, section, trait }: SectionView): string {
  const { code, reason, weight, leastWeight } = section.verdict;
  const first = voice.say(`section.verdict.${code}`, { trait, weight: weightPercent(weight, voice) });
  const key = `section.reason.${reason}`;
  if (!isMessage(key)) return first;
  const best = leadingModel(section);
  const places = {
    model: best ? voice.say(`section.model.${best.name}`) : '',
    weight: weightPercent(best?.weight ?? null, voice),
    least: `${voice.number(100 * leastWeight, 0)}%`,
  };
  return `${first} ${voice.say(key, places)}`;
}

/** The model of the joint form with the greatest weight; undefined where none has one. */
export function leadingModel({ models }: CompiledSection): Model | undefined {
  return models.joint.filter(({ weight }) => weight !== null).sort((a, b) => b.weight! - a.weight!)[0];
}

/** The numbers of a model with their limits: per cent of the height on a log scale, else mm. */
export function modelNumbers(model: Model, { view: { voice }, section }: SectionView): string[] {
  const spread = spreadWords(section.scale, voice);
  const [low, high] = model.varianceLimits.map((end) => (end === null ? '–' : spread(Math.sqrt(end))));
  const places = { value: spread(Math.sqrt(model.variance)), low: low!, high: high! };
  const key = model.name === 'stasis' ? 'section.scatter' : 'section.walk';
  const rows = [model.varianceOnBound ? voice.say('section.bound') : voice.say(key, places)];
  if (model.meanStep === null) return rows;
  const step = stepWords(section.scale, voice);
  const ends = model.meanStepLimits.map((end) => (end === null ? '–' : step(end)));
  const steps = { value: step(model.meanStep), low: ends[0]!, high: ends[1]! };
  return [voice.say('section.step', steps), ...rows];
}

/** A spread as it is printed: on a log scale the share by which a height typically goes up. */
function spreadWords(scale: string, voice: Voice): (spread: number) => string {
  return scale === 'log'
    ? (spread) => `${voice.number(100 * (Math.exp(spread) - 1), 1)}%`
    : (spread) => voice.say('section.value', { value: voice.number(spread, 2) });
}

function stepWords(scale: string, voice: Voice): (step: number) => string {
  const signed = (value: number, decimals: number) =>
    `${value < 0 ? '−' : '+'}${voice.number(Math.abs(value), decimals)}`;
  return scale === 'log'
    ? (step) => `${signed(100 * (Math.exp(step) - 1), 0)}%`
    : (step) => voice.say('section.value', { value: signed(step, 2) });
}

/** Over how many years the animals of a level may have gathered, in a sentence. */
export function averagingWords(least: number, most: number, voice: Voice): string {
  const years = voice.number(most, 0);
  return least === most
    ? voice.say('section.cannot.averagingSame', { years })
    : voice.say('section.cannot.averaging', { least: voice.number(least, 0), most: years });
}
