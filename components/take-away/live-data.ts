import type { ModelName } from '../../analysis/estimate/index.ts';
import type { TraitScale } from '../../analysis/traits/index.ts';
import type { PlateFrame, PlatePlace } from './plate-frames.ts';

/**
 * What a page hands to the browser to recompute one trait, as a data block. Numbers are on the scale of the model; nodes are
 * indices of the tree, children before parents. Readers ignore fields that they do not know.
 */
export interface LiveData {
  schema: 'lineament.live/1';
  trait: string;
  scale: TraitScale;
  model: ModelName;
  level: number;
  /** Start of the random numbers, which only several limits need. */
  seed: number;
  tree: {
    /** Index of the parent of each node; -1 for the root, which is last. */
    parent: number[];
    ageMa: number[];
    /** Id of the animal at each tip; '' at a fork. */
    taxon: string[];
  };
  measured: { taxon: string[]; mean: number[]; variance: number[] };
  /** Limits of broken skulls of animals that nobody measured; `twig` is the variance by which each hangs on its animal. */
  limits: { taxon: string; specimen: string; atLeast?: number; atMost?: number; twig: number }[];
  /** Animals of the tree without a mean, which relatives are asked for. */
  unmeasured: string[];
  /** Names of animals, for sentences. */
  names: Record<string, string>;
  /** Measured values as they are printed, by animal. */
  truth: Record<string, string>;
  language: string;
  /** Messages of the page's language that the browser fills. */
  words: Record<string, string>;
  /** How each format of the plate is drawn, and where animals stand in time. */
  plates: PlateFrame[];
  places: Record<string, PlatePlace>;
}
