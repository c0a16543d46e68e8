import { expect, test } from 'vitest';
import { beliefAt } from '../../../analysis/estimate/passes/belief.ts';
import { makeMessages } from '../../../analysis/estimate/passes/messages.ts';
import { buildNetwork } from '../../../analysis/estimate/passes/network.ts';
import { passDown } from '../../../analysis/estimate/passes/pass-down.ts';
import { passUp } from '../../../analysis/estimate/passes/pass-up.ts';
import { makeInformationRoom, rateInformation } from '../../../analysis/estimate/rate/rate-information.ts';
import { normalDraw, seededRandom } from '../../../analysis/random/index.ts';
import { denseBrownian, tipNodes } from '../../reference/dense-brownian.ts';
import { randomTree } from '../../reference/random-tree.ts';

test('linear passes equal dense algebra on 200 random trees with errors, missing tips and polytomies', () => {
  for (let draw = 0; draw < 200; draw++) {
    const random = seededRandom('dense', draw);
    const tree = randomTree(4 + Math.floor(random() * 26), random, { polytomies: draw % 2 === 0 });
    const tips = [...tipNodes(tree).keys()];
    const observations = tips
      .filter((_, index) => index < 4 || random() < 0.8)
      .map((taxon) => ({ taxon, mean: normalDraw(random), variance: random() < 0.3 ? 0 : 0.1 * random() }));
    const rate = Math.exp(2 * normalDraw(random));
    const network = buildNetwork(tree, observations);
    const messages = makeMessages(network.parent.length);
    const restricted = passUp(network, rate, messages);
    passDown(network, rate, messages);
    const observed = new Set(observations.map(({ taxon }) => taxon));
    const targets = Array.from(tree.parent, (_, node) => node).filter(
      (node) => !observed.has(tree.label[node]!),
    );
    const dense = denseBrownian(tree, observations, rate, targets);
    expect(restricted).toBeCloseTo(dense.restricted, 9);
    targets.forEach((node, index) => {
      const belief = beliefAt(messages, network.nodeOf[node]!);
      expect(belief.mean).toBeCloseTo(dense.targets[index]!.mean, 9);
      expect(belief.variance / dense.targets[index]!.variance).toBeCloseTo(1, 9);
    });
    const information = rateInformation(network, rate, makeInformationRoom(network.parent.length));
    expect(information / dense.information).toBeCloseTo(1, 8);
  }
});

test('all but one child keeps its digits beside a twig of 1e-12 of the tree', () => {
  const random = seededRandom('twig');
  const tree = randomTree(8, random);
  const sister = tree.parent.findIndex((parent, node) => parent === tree.parent[0] && node !== 0);
  const short = {
    ...tree,
    branchLength: tree.branchLength.map((length, node) => (node === sister ? 1e-10 : length)),
  };
  const observations = Array.from({ length: 8 }, (_, tip) => ({ taxon: `t${tip}`, mean: tip, variance: 0 }));
  const network = buildNetwork(short, observations);
  const messages = makeMessages(network.parent.length);
  passUp(network, 1, messages);
  passDown(network, 1, messages);
  const fork = tree.parent[sister]!;
  let direct = messages.fallingPrecision[fork]!;
  for (let child = network.firstChild[fork]!; child !== -1; child = network.nextSibling[child]!)
    if (child !== sister) direct += messages.risingPrecision[child]!;
  expect(messages.otherPrecision[sister]! / direct).toBeCloseTo(1, 14);
});
