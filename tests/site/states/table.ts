import { pairwise, type Case } from './pairs.ts';

/** What a page can be. Sizes are CSS pixels; 320x256 is 1280x1024 at 400%, the limit of WCAG 2.2 1.4.10. */
export const choices = {
  page: ['explainer', 'index', 'missing'],
  theme: ['paper', 'night'],
  size: ['320x256', '390x844', '768x1024', '1440x900', '1080x1920'],
  state: ['opening', 'step', 'card', 'slice'],
  language: ['en', 'es'],
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

/** Only the explainer has steps, cards and slices, and only it is told in more than one language. */
export function isPossible({ page, state, language }: Case): boolean {
  return page === 'explainer' || (state === 'opening' && language === 'en');
}

/** The table of states. */
export const states = pairwise(choices, isPossible);
