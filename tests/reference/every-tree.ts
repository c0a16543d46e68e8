import { parseNewick, type Tree } from '../../analysis/tree/index.ts';

type Fork = string | readonly [Fork, Fork];

/** Every tree without a root of some names, in forks of two, each written with its first name beside the rest. */
export function everyTree(names: readonly string[]): Tree[] {
  const [first, second, ...rest] = names;
  let forks: Fork[] = [second!];
  for (const name of rest) forks = forks.flatMap((fork) => withName(fork, name));
  return forks.map((fork) => parseNewick(`(${first},${write(fork)});`));
}

function withName(fork: Fork, name: string): Fork[] {
  if (typeof fork === 'string') return [[fork, name]];
  const [left, right] = fork;
  return [
    [fork, name],
    ...withName(left, name).map((changed): Fork => [changed, right]),
    ...withName(right, name).map((changed): Fork => [left, changed]),
  ];
}

function write(fork: Fork): string {
  return typeof fork === 'string' ? fork : `(${write(fork[0])},${write(fork[1])})`;
}
