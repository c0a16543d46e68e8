import { bracketData } from '../figures/bracket-tree/bracket-data.ts';
import { forkText } from '../figures/bracket-tree/bracket-words.ts';
import type { StoryPlan } from '../lineage/story-plan.ts';
import { lineageView, type LineageView } from '../lineage/view.ts';
import { lineagePhotographs } from '../photographs/photographs.ts';
import { findSliceBlock } from '../slice/compose-block.ts';
import { cutBranches, toldAges } from '../slice/slice-at.ts';
import { ageWords, boneWords } from '../slice/slice-words.ts';
import { sizeSentence } from '../trend/size-words.ts';
import { trendSentence } from '../trend/trend-words.ts';
import type { PartName } from './address.ts';

/** A part in short: its title, what it is about, and what it finds. */
export interface ShortPart {
  title: string;
  lead: string;
  findings: string[];
}

/** What a part says, in so few words that the explainer can open with them. */
export function shortPart(view: LineageView, part: PartName, plan: StoryPlan): ShortPart {
  const { voice } = view;
  const [title, lead] = [voice.say(`${titles[part]}.title`), voice.say(`${titles[part]}.lead`)];
  return { title, lead, findings: findings[part](view, plan).filter(Boolean) };
}

const titles = { slice: 'slice', relatives: 'tree', change: 'change', pictures: 'photo' } as const;

const findings: Record<PartName, (view: LineageView, plan: StoryPlan) => string[]> = {
  slice: (view, { slices }) => {
    const block = findSliceBlock(view);
    return block
      ? toldAges(block.branches, slices).map((ageMa) => {
          const cut = cutBranches(block, ageMa);
          return `${ageWords(view.voice, ageMa, cut.length)}. ${boneWords(view.voice, cut)}`;
        })
      : [];
  },
  relatives: (view, { first }) => {
    const data = bracketData(view, first);
    return data ? [forkText(view, data, data.kin.root)] : [];
  },
  change: (view) =>
    view.lineage.traits
      .filter(({ trend }) => trend)
      .map(({ id }) => lineageView(view.lineage, view.language, id))
      .flatMap((each) => [trendSentence(each), sizeSentence(each)]),
  pictures: (view) => [
    [...new Set(lineagePhotographs(view).map(({ specimen }) => view.requireTaxon(specimen.taxon).name))].join(
      ', ',
    ),
  ],
};
