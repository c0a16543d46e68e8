/** What an attribute of a story component holds. */
export type PropKind =
  | 'focus'
  | 'show'
  | 'number'
  | 'taxon'
  | 'dated'
  | 'trait'
  | 'term'
  | 'counted'
  | 'flag'
  | 'level'
  | 'levelFact'
  | 'sectionFact';

/** One component that stories may use. */
export interface StoryComponent {
  props: Readonly<Record<string, PropKind>>;
  required: readonly string[];
}

/** The components of stories: there are no others. */
export const storyComponents: Readonly<Record<string, StoryComponent>> = {
  Step: {
    props: { focus: 'focus', show: 'show', trait: 'trait', age: 'number', from: 'number', to: 'number' },
    required: [],
  },
  Value: { props: { of: 'taxon', trait: 'trait' }, required: ['of'] },
  Name: { props: { of: 'taxon', short: 'flag', genus: 'flag', vernacular: 'flag' }, required: ['of'] },
  Age: { props: { of: 'dated' }, required: ['of'] },
  Count: { props: { of: 'counted', at: 'number', trait: 'trait' }, required: ['of'] },
  Term: { props: { id: 'term' }, required: ['id'] },
  SizeOf: { props: { trait: 'trait' }, required: [] },
  Trend: { props: { trait: 'trait' }, required: [] },
  Level: { props: { of: 'level', show: 'levelFact' }, required: ['of'] },
  Sampled: { props: { show: 'sectionFact' }, required: ['show'] },
  Aside: { props: {}, required: [] },
  Plain: { props: {}, required: [] },
  Changes: { props: {}, required: [] },
};

/** What a step can show beside its text. */
export const shown = ['figure', 'measurement', 'slice', 'table', 'bone', 'ribbons', 'trend'] as const;

/** What can be counted. */
export const counted = ['branches', 'skulls', 'taxa', 'measured', 'bounded', 'inferred', 'unknown'] as const;

/** What can be told of one level of a section, and of the section as a whole. */
export const levelFacts = ['mean', 'name', 'age', 'height'] as const;
export const sectionFacts = [
  'levels',
  'individuals',
  'whole',
  'worn',
  'span',
  'verdict',
  'model',
  'weight',
  'dates',
] as const;
