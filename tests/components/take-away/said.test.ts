import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { layouts } from '../../../components/figures/scene/layout.ts';
import { plateData } from '../../../components/figures/scene/plate-data.ts';
import { plateScales } from '../../../components/figures/scene/scales.ts';
import { lineageView } from '../../../components/lineage/view.ts';
import { findLiveData } from '../../../components/take-away/find-live-data.ts';
import { liveVoice } from '../../../components/take-away/live-voice.ts';
import { leftOutStatement, type Miss } from '../../../analysis/statements/index.ts';
import { sayStatement } from '../../../components/messages/say-statement.ts';
import { marksFromRelatives } from '../../../components/take-away/plate-marks.ts';
import { estimateWithout, findMiss, type Recomputed } from '../../../components/take-away/recompute.ts';
import { hiddenSentence, restsSentence, unmeasuredSentence } from '../../../components/take-away/said.ts';
import { compileLineage } from '../../../scripts/compile/index.ts';

const folder = fileURLToPath(new URL('../../../content/reed-trunks', import.meta.url));
const lineage = (await compileLineage(folder)).compiled!;
const pages = ['en', 'es'].map((language) => {
  const view = lineageView(lineage, language);
  const live = findLiveData(view)!;
  return { language, view, live, voice: liveVoice(live.language, live.words) };
});
const [english] = pages;
const { live, voice, view } = english!;
const recomputed = (change: Partial<Recomputed>): Recomputed => ({
  taxon: 'riparhina-dura',
  median: 30,
  interval: [20.4, 40.6],
  open: false,
  relatives: [],
  ...change,
});

describe('the sentence of a hidden animal', () => {
  test('says the estimate with its brackets, the true value, and whether it lies inside', () => {
    expect(hiddenSentence(live, recomputed({}), voice)).toBe(
      'Relatives would have said 30 [20–41]. It really reads 22 ± 3, inside the brackets.',
    );
    expect(hiddenSentence(live, recomputed({ median: 40, interval: [30.2, 49.8] }), voice)).toBe(
      'Relatives would have said 40 [30–50]. It really reads 22 ± 3, outside the brackets.',
    );
  });

  test('prints no number of relatives that say no more than no relatives at all', () => {
    expect(hiddenSentence(live, recomputed({ open: true }), voice)).toBe(
      'The relatives that are left do not narrow it down. It really reads 22 ± 3.',
    );
  });
});

describe('the sentence of an animal that nobody measured', () => {
  const [now, before] = [recomputed({}), recomputed({ median: 33, interval: [25, 41] })];

  test('sets what relatives say now beside what they said', () => {
    expect(unmeasuredSentence(now, before, false, voice)).toBe(
      'Now 30 [20–41]; with every skull 33 [25–41].',
    );
  });

  test('gives a limited animal no best guess', () => {
    expect(unmeasuredSentence(now, before, true, voice)).toBe(
      'Now between 20 and 41; with every skull between 25 and 41.',
    );
  });

  test('says that it is no longer known', () => {
    expect(unmeasuredSentence({ ...now, open: true }, before, false, voice)).toBe(
      'Now not known; with every skull 33 [25–41].',
    );
  });
});

test('relatives are named largest first, the small ones together', () => {
  const shares = [0.5, 0.2, 0.15, 0.1, 0.04, 0.01];
  const relatives = shares.map((weight, index) => ({ taxon: live.measured.taxon[index]!, weight }));
  expect(restsSentence(live, recomputed({ relatives }), voice)).toMatch(
    /^Resting on \S+ \S+ 50%, .*10%, others 5%$/,
  );
});

test.each(pages)('every sentence of a page in $language finds its words', ({ live: block, voice: own }) => {
  for (const taxon of block.measured.taxon) {
    const answer = estimateWithout(block, new Set([taxon]))!;
    const whole = estimateWithout(block, new Set())!;
    for (const each of answer.values()) {
      const text = block.truth[each.taxon]
        ? hiddenSentence(block, each, own)
        : unmeasuredSentence(each, whole.get(each.taxon)!, each.taxon === 'limnorhina-fracta', own);
      expect(text + restsSentence(block, each, own)).not.toMatch(/undefined|NaN|\{/);
    }
  }
});

describe('the leave-one-out sentence', () => {
  const miss = (observed: number, low: number, high: number, inside: boolean): Miss => ({
    taxon: 'ixa',
    observed,
    median: (low + high) / 2,
    interval: [low, high],
    inside,
  });

  test('is the mean miss, the mean half width and the count inside', () => {
    const summary = leftOutStatement([miss(10, 0, 12, true), miss(40, 10, 30, false)])!;
    expect(summary).toEqual({
      code: 'leftOut.sentence',
      args: { miss: 12, half: 8, inside: 1, count: 2, decimals: 0 },
    });
    expect(sayStatement(summary, voice)).toBe(
      'Hide a skull that we have, and the method misses by 12 on average and says ± 8; 1 of 2 lie inside the brackets.',
    );
  });

  test('is not said of nothing, nor of an interval without an end', () => {
    expect(leftOutStatement([])).toBeUndefined();
    expect(leftOutStatement([{ ...miss(1, 0, 2, true), interval: [null, 2] }])).toBeUndefined();
  });

  test('counts the compiled animals of the bundled lineage', () => {
    const { leaveOneOut } = view.trait;
    const { args } = leftOutStatement(leaveOneOut)!;
    const mean = leaveOneOut.reduce((sum, each) => sum + Math.abs(each.miss), 0) / leaveOneOut.length;
    expect(args['miss']).toBeCloseTo(mean, 0);
    expect(args['count']).toBe(leaveOneOut.length);
  });

  test('is the compiled one when a browser makes it from the same misses', () => {
    const {
      kind: _kind,
      digest: _digest,
      ...compiled
    } = view.trait.statements.find(({ kind }) => kind === 'left-out')!;
    const misses = live.measured.taxon.map((taxon) => findMiss(live, new Set(), taxon)!);
    expect(leftOutStatement(misses)).toEqual(compiled);
  });
});

describe('the mark of a hidden animal on the plate', () => {
  const [taxon] = ['riparhina-dura'];
  const each = estimateWithout(live, new Set([taxon!]))!.get(taxon!)!;
  const place = live.places[taxon!]!;

  test.each(layouts.map((layout) => [layout.name, layout] as const))(
    'stands on the %s plate where the plate itself puts its value',
    (name, layout) => {
      const scales = plateScales(plateData(lineage, view.trait, 'en'), layout);
      const frame = live.plates.find((plate) => plate.layout === name)!;
      for (const value of [-10, 0, 37.5, 120])
        expect(frame.zero + frame.unit * value).toBeCloseTo(scales.x(value), 9);
      for (const age of [0, 12.5, 55]) expect(frame.today + frame.perMa * age).toBeCloseTo(scales.y(age), 9);
    },
  );

  test('is that of an inferred value, with a tick where its skulls stand', () => {
    for (const frame of live.plates) {
      const svg = marksFromRelatives(frame, place, each);
      for (const role of ['ruled', 'bracket', 'diamond', 'miss-truth'])
        expect(svg).toContain(`class="${role}"`);
      expect(svg).not.toMatch(/class="(disc|whisker)"|NaN|style=/);
    }
  });

  test('is that of an unknown value where relatives do not narrow it down', () => {
    const svg = marksFromRelatives(live.plates[0]!, place, { ...each, open: true });
    expect(svg).toContain('class="ring"');
    expect(svg).not.toMatch(/class="(diamond|miss-line)"/);
  });

  test('has no tick for an animal that nobody measured', () => {
    const inferred = view.trait.values.find(({ status }) => status === 'inferred')!.taxon;
    const now = estimateWithout(live, new Set())!.get(inferred)!;
    expect(marksFromRelatives(live.plates[0]!, live.places[inferred]!, now)).not.toContain('miss-');
  });
});
