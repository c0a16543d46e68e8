import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { forksOf, kinOf, tipsOf, type Kin } from '../../../components/figures/bracket-tree/kin.ts';
import { turnFork, turnToMiddle } from '../../../components/figures/bracket-tree/turn.ts';
import { kinFrom, relationships } from './relationships.ts';

const comb = kinFrom('(a,(b,(c,(d,(e,(g,h)f5)f4)f3)f2)f1)f0');
const bush = kinFrom('(((a,b)f2,(c,d,e)f3)f1,(g,(h,i)f5)f4)f0');
const hashOf = (kin: Kin) => createHash('sha256').update(relationships(kin)).digest('hex');

/** Random trees: each new animal joins a fork, or parts the line of an animal that is there. */
const anyKin = fc.array(fc.nat(), { minLength: 1, maxLength: 40 }).map((choices) => {
  let made = 0;
  const grow = (kin: Kin, choice: number): Kin => {
    if (kin.children.length === 0 || choice % 7 === 0)
      return { id: `f${made}`, children: [kin, { id: `t${made++}`, children: [] }] };
    const next = choice % kin.children.length;
    return {
      id: kin.id,
      children: kin.children.map((child, at) => (at === next ? grow(child, Math.floor(choice / 3)) : child)),
    };
  };
  return choices.reduce(grow, { id: 'first', children: [] } as Kin);
});

describe('turning a fork', () => {
  test('reverses what hangs on it and nothing else', () => {
    expect(tipsOf(turnFork(bush, 'f3'))).toEqual(['a', 'b', 'e', 'd', 'c', 'g', 'h', 'i']);
    expect(tipsOf(turnFork(bush, 'f1'))).toEqual(['c', 'd', 'e', 'a', 'b', 'g', 'h', 'i']);
  });

  test('keeps the hash of the relationships, whichever forks are turned', () => {
    fc.assert(
      fc.property(anyKin, fc.array(fc.nat(), { maxLength: 12 }), (kin, picks) => {
        const forks = forksOf(kin);
        const turned = picks.reduce((tree, pick) => turnFork(tree, forks[pick % forks.length]!.id), kin);
        expect(hashOf(turned)).toBe(hashOf(kin));
      }),
    );
  });

  test('twice gives the tree from before', () => {
    for (const fork of forksOf(bush)) expect(turnFork(turnFork(bush, fork.id), fork.id)).toEqual(bush);
  });

  test('a hash of relationships tells apart trees with the same animals', () => {
    expect(hashOf(kinFrom('((a,b)f1,c)f0'))).not.toBe(hashOf(kinFrom('(a,(b,c)f1)f0')));
  });

  test('an unknown fork changes nothing', () => {
    expect(turnFork(comb, 'nowhere')).toEqual(comb);
  });
});

describe('turning an animal to the middle', () => {
  test('takes the last of a comb away from the end', () => {
    const order = tipsOf(turnToMiddle(comb, 'h'));
    expect(order.indexOf('h')).toBeGreaterThan(1);
    expect(order.indexOf('h')).toBeLessThan(order.length - 2);
  });

  test('keeps the hash of the relationships', () => {
    for (const animal of tipsOf(bush)) expect(hashOf(turnToMiddle(bush, animal))).toBe(hashOf(bush));
  });

  test('no animal is left at an end unless it parts from all others at the root', () => {
    fc.assert(
      fc.property(anyKin, fc.nat(), (kin, pick) => {
        const animals = tipsOf(kin);
        const animal = animals[pick % animals.length]!;
        const order = tipsOf(turnToMiddle(kin, animal));
        const ends = [order[0], order.at(-1)];
        const alone = kin.children.length === 2 && kin.children.some((child) => child.id === animal);
        expect(ends.includes(animal)).toBe(alone);
      }),
    );
  });

  test('an animal that is not in the tree leaves the order as it is', () => {
    expect(turnToMiddle(bush, 'nobody')).toEqual(bush);
  });
});

describe('the relatives of a compiled tree', () => {
  const tree = { id: 'main', reference: true, dating: 'given' };

  test('a named fork gives its name to a line of its own', () => {
    const nodes = [
      { id: 'root', parent: null, ageMa: 20 },
      { id: 'fork', parent: 'root', ageMa: 10, taxon: 'elder' },
      { id: 'a', parent: 'fork', ageMa: 0, taxon: 'a' },
      { id: 'b', parent: 'root', ageMa: 0, taxon: 'b' },
    ];
    const { root, agesMa } = kinOf({ ...tree, nodes })!;
    expect(tipsOf(root).sort()).toEqual(['a', 'b', 'elder']);
    expect(agesMa.get('elder')).toBe(10);
  });

  test('a node with one child is passed over', () => {
    const nodes = [
      { id: 'root', parent: null, ageMa: 20 },
      { id: 'between', parent: 'root', ageMa: 10 },
      { id: 'a', parent: 'between', ageMa: 0, taxon: 'a' },
      { id: 'b', parent: 'root', ageMa: 0, taxon: 'b' },
    ];
    expect(kinOf({ ...tree, nodes })!.root.children.map(({ id }) => id)).toEqual(['a', 'b']);
  });

  test('a tree without nodes has no relatives', () => {
    expect(kinOf({ ...tree, nodes: [] })).toBeUndefined();
  });
});
