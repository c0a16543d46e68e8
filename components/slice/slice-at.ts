import { branchesAt } from '../figures/scene/branch-list.ts';
import type { SliceBlock, SliceBranch } from './slice-block.ts';

/** A branch as a line at one age cuts it. */
export interface CutBranch {
  readonly branch: SliceBranch;
  /** How far from its fork to its end the line cuts it, 0 to 1. */
  readonly share: number;
  readonly value: number;
  /** Whether bones of its animal are of that age. */
  readonly hasBone: boolean;
}

/** Branches that a line at an age cuts, in the order of their values, lowest first; equal ones in the order of the tree. */
export function cutBranches(
  { branches, values }: Pick<SliceBlock, 'branches' | 'values'>,
  ageMa: number,
): CutBranch[] {
  return branchesAt(branches, ageMa)
    .map((branch) => {
      const share = shareAt(branch, ageMa);
      const [from, to] = branch.ends;
      return {
        branch,
        share,
        value: values[from]! + share * (values[to]! - values[from]!),
        hasBone: hasBoneAt(branch, ageMa),
      };
    })
    .sort((one, other) => one.value - other.value);
}

/** Share of a branch's time that has passed at an age; an animal that lived on after its place on the tree stays as it is there. */
export function shareAt({ from, toMa }: Pick<SliceBranch, 'from' | 'toMa'>, ageMa: number): number {
  const spanMa = from.ageMa - toMa;
  return spanMa > 0 ? Math.min(1, Math.max(0, (from.ageMa - ageMa) / spanMa)) : 1;
}

function hasBoneAt({ animal }: SliceBranch, ageMa: number): boolean {
  return animal !== undefined && animal.firstMa >= ageMa && animal.lastMa <= ageMa;
}

/** A shape on its way between the outlines of two nodes. */
export interface ShapeEnds {
  readonly from: ArrayLike<number>;
  readonly to: ArrayLike<number>;
  /** How far on the way it is, 0 to 1. */
  readonly share: number;
}

/** What the shape of a cut branch lies between; undefined where one of its ends has no outline. */
export function findShape(
  { outlines }: { readonly outlines: readonly (ArrayLike<number> | null)[] },
  { branch, share }: Pick<CutBranch, 'branch' | 'share'>,
): ShapeEnds | undefined {
  const [from, to] = [outlines[branch.ends[0]], outlines[branch.ends[1]]];
  return from && to ? { from, to, share } : undefined;
}

/** Numbers that lie at a share of the way between two lists of equal length. */
export function numbersBetween(from: ArrayLike<number>, to: ArrayLike<number>, share: number): Float64Array {
  return Float64Array.from(from, (start, index) => start + share * (to[index]! - start));
}

/** Ages at which the page itself cuts the tree: those that the story names, once each; without one, the middle of the tree's time. */
export function toldAges(branches: readonly SliceBranch[], ofStory: readonly number[]): number[] {
  const oldestMa = oldestAge(branches);
  const told = [...new Set(ofStory.filter((age) => age <= oldestMa))];
  return ofStory.length === 0 ? [Math.round(oldestMa / 2)] : told;
}

/** Finest step of the line, in million years. */
export const stepMa = 0.1;

/**
 * The age at the next fork: going back it is the last step at which its branches are still one, coming forward the first at
 * which they are two. Where there is no further fork, the oldest age or today.
 */
export function ageAtNextFork(
  branches: readonly SliceBranch[],
  ageMa: number,
  toward: 'older' | 'younger',
): number {
  const forks = branches.map(({ from }) => from.ageMa);
  const steps = (age: number) => age / stepMa;
  if (toward === 'older') {
    const oldest = oldestAge(branches);
    const stops = forks
      .map((age) => Math.ceil(steps(age) - 1e-9))
      .filter((stop) => stop > Math.round(steps(ageMa)));
    return Math.min(oldest, atStep(Math.min(...stops, steps(oldest))));
  }
  const stops = forks
    .map((age) => Math.ceil(steps(age) - 1e-9) - 1)
    .filter((stop) => stop < Math.round(steps(ageMa)));
  return atStep(Math.max(0, ...stops));
}

/** The oldest age at which a line cuts the tree, on a whole step. */
export function oldestAge(branches: readonly SliceBranch[]): number {
  const root = Math.max(stepMa, ...branches.map(({ from }) => from.ageMa));
  return atStep(Math.ceil(root / stepMa - 1e-9) - 1);
}

/** The age nearest to a wish on which the line can stand. */
export function allowedAge(branches: readonly SliceBranch[], wishedMa: number): number {
  return Math.min(oldestAge(branches), Math.max(0, atStep(Math.round(wishedMa / stepMa))));
}

function atStep(step: number): number {
  return Number((step * stepMa).toFixed(1));
}
