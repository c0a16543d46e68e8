import type { Kin } from '../../../components/figures/bracket-tree/kin.ts';

/** Who is related to whom and nothing else: the groups of a tree, each with its names sorted, whatever the order drawn. */
export function relationships(kin: Kin): string {
  if (kin.children.length === 0) return kin.id;
  return `(${kin.children.map(relationships).sort().join(',')})`;
}

/** Nested relatives from a text like `((a,b)f1,c)f0`: forks are named, animals are letters. */
export function kinFrom(text: string): Kin {
  let at = 0;
  const read = (): Kin => {
    const children: Kin[] = [];
    if (text[at] === '(') {
      do {
        at++;
        children.push(read());
      } while (text[at] === ',');
      at++;
    }
    const id = /^[\w-]+/.exec(text.slice(at))![0];
    at += id.length;
    return { id, children };
  };
  return read();
}
