import { dateAsGiven, parseNewick } from '../../analysis/tree/index.ts';
import nineTips from './values/nine-tips.json' with { type: 'json' };

/** The tree of the nine tips with one more on its root, `top`: an exact observation there makes the root's mean known. */
export const rootedNineTips = dateAsGiven(
  parseNewick(nineTips.newick.replace('(J:12', '(top:0,J:12')),
  nineTips.rootAge,
);
