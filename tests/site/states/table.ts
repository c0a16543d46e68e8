import { pairwise, type Case } from './pairs.ts';

/** What a page can be. Sizes are CSS pixels; 320x256 is 1280x1024 at 400%, the limit of WCAG 2.2 1.4.10. */
export const choices = {
  page: ['explainer', 'section', 'index', 'bench', 'methods', 'records', 'missing'],
  theme: ['paper', 'night'],
  size: ['320x256', '390x844', '768x1024', '1440x900', '1080x1920'],
  state: ['opening', 'step', 'card', 'slice', 'table', 'cut', 'series', 'unfolded'],
  language: ['en', 'es', 'ar'],
} as const;

/** Pages that stand apart (a card, which the bundled lineages keep on one page, and a part), and a state that they lack: the fitted line. */
export const furtherChoices = {
  ...choices,
  page: [...choices.page, 'card-apart', 'part'],
  state: [...choices.state, 'trend'],
} as const;

export const sizes = choices.size.map(sizeOf);

export interface Size {
  name: string;
  width: number;
  height: number;
}

export function sizeOf(name: string): Size {
  const [width = 0, height = 0] = name.split('x').map(Number);
  return { name, width, height };
}

/** The states that a kind of page comes into; a page that is not named only opens. */
const statesOf: Record<string, readonly string[]> = {
  explainer: furtherChoices.state,
  section: ['opening', 'step', 'unfolded'],
  records: ['opening', 'unfolded'],
};

/** The languages that a kind of page is told in; the shelf, the bench and the methods in all of the interface. */
const languagesOf: Record<string, readonly string[]> = {
  explainer: ['en', 'es'],
  section: ['en', 'es'],
  records: ['en', 'es'],
  part: ['en', 'es'],
  missing: ['en'],
  'card-apart': ['en'],
};

/** Whether a page of this kind comes into this state and is told in this language. */
export function isPossible({ page, state, language }: Case): boolean {
  const states = statesOf[String(page)] ?? ['opening'];
  const languages = state === 'trend' ? ['en'] : (languagesOf[String(page)] ?? choices.language);
  return states.includes(String(state)) && languages.includes(String(language) as 'en');
}

/** The table of states. */
export const states = pairwise(choices, isPossible);
