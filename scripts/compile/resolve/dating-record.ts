import type { Report } from '../findings/report.ts';
import type { AuthoredLineage, AuthoredTree } from '../schema/index.ts';
import type { Located } from '../source/yaml-source.ts';

type DatingRecord = Exclude<AuthoredTree['dating'], string>;

/** How a tree is dated as a record, where the author may have written the method alone. */
export function datingRecord({ dating }: AuthoredTree): DatingRecord {
  return typeof dating === 'string' ? { method: dating } : dating;
}

/** Every tree gives what its dating needs: a root age for equal shares, a shortest branch for the minimum. */
export function checkDating(lineage: Located<AuthoredLineage>, report: Report): void {
  lineage.value.trees.forEach((tree, index) => {
    const { method, root, minimumBranch } = datingRecord(tree);
    const span = lineage.at(['trees', index, 'dating']);
    if (method === 'equal-share' && root === undefined) {
      report.add(
        'tree-age',
        span,
        `the tree "${tree.id}" has no age for its root`,
        'give root in dating, in Ma: { method: equal-share, root: 55 }',
      );
    }
    if (method === 'minimum-branch' && minimumBranch === undefined) {
      report.add(
        'tree-age',
        span,
        `the tree "${tree.id}" has no shortest branch`,
        'give minimumBranch in dating, in million years: { method: minimum-branch, minimumBranch: 1 }',
      );
    }
  });
}
