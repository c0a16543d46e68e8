import type { TextRun } from '../figures/scene/scene.ts';
import type { ChartMeasure } from './slice-chart.ts';

/** One line of a drawn shape: a stretch of the outline's points, first and last included; a ring unless it is an edge. */
export interface OutlineLine {
  readonly role: 'bone' | 'bone-fill' | 'bone-edge' | 'socket' | 'opening' | 'opening-fill' | 'opening-edge';
  readonly first: number;
  readonly last: number;
}

/** A line with those of its points that are enough while the visitor moves the line across the tree. */
export interface MovingLine extends OutlineLine {
  readonly rough: readonly number[];
}

/** A named animal whose own twig a branch is. */
export interface SliceAnimal {
  readonly taxon: string;
  /** First and last find, Ma. */
  readonly firstMa: number;
  readonly lastMa: number;
  readonly name: readonly TextRun[];
  /** What is known of it, and what its drawing is made from. */
  readonly note: string;
  /** Address of its small picture; left out where no skull of it was digitised. */
  readonly picture?: string;
}

/** One branch of the tree, from the fork where it begins to its end. */
export interface SliceBranch {
  readonly id: string;
  readonly from: { readonly ageMa: number };
  /** Age at which its end stands on the tree. */
  readonly toMa: number;
  /** Youngest age at which it is known to exist. */
  readonly lastMa: number;
  /** Nodes of its two ends. */
  readonly ends: readonly [from: number, to: number];
  readonly name: readonly TextRun[];
  readonly animal?: SliceAnimal;
}

/** What a page fetches to move the line. Readers ignore fields that they do not know. */
export interface SliceBlock {
  readonly schema: 'lineament.slice/2';
  readonly branches: readonly SliceBranch[];
  /** Value of the trait at each node. */
  readonly values: readonly number[];
  readonly lines: readonly MovingLine[];
  /** x and y of each point of the outline at each node, in tenths of a unit; null where the template would fold. */
  readonly outlines: readonly (readonly number[] | null)[];
  /** Left, top, width and height of every picture, in tenths of a unit. */
  readonly box: readonly [number, number, number, number];
  readonly chart: ChartMeasure;
  readonly language: string;
  /** Messages of the page's language that the browser fills. */
  readonly words: Readonly<Record<string, string>>;
}
