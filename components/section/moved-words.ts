import type { CompiledSection } from '../../scripts/compile/contract.ts';
import { figures } from '../messages/direction.ts';
import { leadingModel, weightPercent } from './model-words.ts';
import type { SectionView } from './section-view.ts';

type Moved = NonNullable<CompiledSection['moved']>['weights'][number];

/** What other dates, inside their errors, do to the weight of the best model; undefined where nothing could be moved. */
export function findMovedWords({ view: { voice }, section }: SectionView): string | undefined {
  const { moved, verdict } = section;
  const best = leadingModel(section);
  const own = moved?.weights.find(({ name }) => name === best?.name);
  if (!moved || !best || !own) return undefined;
  const least = weightPercent(own.least, voice);
  const greatest = weightPercent(own.greatest, voice);
  const places = { sets: moved.sets, model: voice.say(`section.model.${best.name}`), least };
  const named = moved.weights.reduce((sum, each) => sum + each.named, 0);
  const needed = `${voice.number(100 * verdict.leastWeight, 0)}%`;
  return [
    least === greatest
      ? voice.say('section.moved.same', places)
      : voice.say('section.moved.range', { ...places, greatest }),
    own.leads === moved.sets
      ? voice.say('section.moved.all')
      : voice.say('section.moved.some', { leads: own.leads }),
    ...(named === moved.sets || (named === 0 && verdict.code === 'cannot-tell')
      ? []
      : [voice.say('section.moved.named', { named, least: needed })]),
  ].join(' ');
}

/** The weights of a model over other dates, as a cell of the table: `38–52%`, or one number where they print alike. */
export function movedRange({ least, greatest }: Moved, { view: { voice, language } }: SectionView): string {
  const ends = [least, greatest].map((weight) => weightPercent(weight, voice));
  return figures(ends[0] === ends[1] ? ends[0]! : `${ends[0]!.replace('%', '')}–${ends[1]!}`, language);
}
