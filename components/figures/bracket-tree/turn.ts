import { tipsOf, type Kin } from './kin.ts';

/** The same relatives with one fork turned over: what hung on it from top to bottom hangs from bottom to top. */
export function turnFork(kin: Kin, fork: string): Kin {
  const children = kin.children.map((child) => turnFork(child, fork));
  return { id: kin.id, children: kin.id === fork ? children.reverse() : children };
}

/**
 * The same relatives with one animal as near to the middle of the order as turning alone can bring it. At each fork on
 * the way to it the larger neighbours choose first, and each goes to the side that is shorter by then. An animal that is
 * not there, or that parts from all others at the root, leaves what can be left.
 */
export function turnToMiddle(kin: Kin, animal: string): Kin {
  const way = wayTo(kin, animal);
  const neighbours = way
    .slice(0, -1)
    .flatMap((fork, index) => fork.children.filter((child) => child !== way[index + 1]));
  const above = upperHalf(neighbours);
  return (
    way.slice(0, -1).reduceRight<Kin | undefined>((inner, fork, index) => {
      const next = way[index + 1]!;
      const others = fork.children.filter((child) => child !== next);
      return {
        id: fork.id,
        children: [
          ...others.filter((child) => above.has(child)),
          inner ?? next,
          ...others.filter((child) => !above.has(child)),
        ],
      };
    }, undefined) ?? kin
  );
}

/** From the root to an animal; empty where it is not there. */
function wayTo(kin: Kin, animal: string): Kin[] {
  if (kin.id === animal) return [kin];
  for (const child of kin.children) {
    const way = wayTo(child, animal);
    if (way.length > 0) return [kin, ...way];
  }
  return [];
}

/** Which of these go above, when the largest chooses first and each joins the side with fewer animals. */
function upperHalf(neighbours: readonly Kin[]): Set<Kin> {
  const bySize = neighbours.map((kin) => ({ kin, size: tipsOf(kin).length })).sort((a, b) => b.size - a.size);
  const above = new Set<Kin>();
  let balance = 0;
  for (const { kin, size } of bySize) {
    if (balance <= 0) above.add(kin);
    balance += balance <= 0 ? size : -size;
  }
  return above;
}
