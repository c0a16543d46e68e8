import { buildTree, datedTree, type DatedTree } from '../../analysis/tree/index.ts';

/** Random rooted tree by random joining with tips of many ages; forks have two children, or more now and then. */
export function randomTree(
  tipCount: number,
  random: () => number,
  options: { polytomies?: boolean } = {},
): DatedTree {
  const parent: number[] = [];
  const ageMa: number[] = [];
  const label: string[] = [];
  const add = (age: number, name: string) => {
    parent.push(-1);
    ageMa.push(age);
    label.push(name);
    return parent.length - 1;
  };
  const live = Array.from({ length: tipCount }, (_, tip) =>
    add(random() < 0.7 ? 40 * random() : 0, `t${tip}`),
  );
  while (live.length > 1) {
    const size = options.polytomies && random() < 0.3 ? 3 : 2;
    const joined: number[] = [];
    for (let k = 0; k < size && live.length > 0; k++)
      joined.push(live.splice(Math.floor(random() * live.length), 1)[0]!);
    const fork = add(Math.max(...joined.map((node) => ageMa[node]!)) + 1 + 10 * -Math.log(1 - random()), '');
    for (const node of joined) parent[node] = fork;
    live.push(fork);
  }
  const tree = buildTree(Int32Array.from(parent), new Float64Array(parent.length), label);
  return datedTree(tree, Float64Array.from(ageMa));
}
