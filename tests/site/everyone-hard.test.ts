import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { hardLineages } from './fixtures/hard-lineages.ts';
import { writeLineage } from './fixtures/write-lineage.ts';
import { shiftWithLateFaces } from './held-faces.ts';
import { overflowOf, useBrowser } from './open-page.ts';
import { rulesBroken } from './rules.ts';
import { useSite } from './use-site.ts';
import { readStep, visit } from './visit.ts';

useBrowser();
const { out, at } = useSite('hard', async (content) => {
  for (const lineage of hardLineages) await writeLineage(content, lineage);
});
const addressOf = (id: string) => at(`${id}/`);
const phone = { width: 390, height: 844 };
const desktop = { width: 1440, height: 900 };

describe.each(hardLineages.map(({ id, taxa, title }) => ({ id, count: taxa.length, title })))(
  'the page of $id',
  ({ id, count, title }) => {
    test.each([phone, desktop])(
      'is whole at %o, and an outside checker finds no fault',
      async (viewport) => {
        await visit(addressOf(id), { viewport }, async ({ view, faults }) => {
          expect(await view.locator('h1').innerText()).toBe(title);
          expect(await view.locator('.plate:visible').count()).toBe(1);
          expect(await view.locator('#values .values tr[data-of]').count()).toBe(count);
          expect(await view.locator('.card').count()).toBe(count > 60 ? 0 : count);
          expect(await view.locator('.invented').isVisible()).toBe(true);
          expect(await overflowOf(view)).toBe(0);
          const figure = (await view.locator('.figure').boundingBox())!;
          const caption = (await view.locator('.caption:visible').boundingBox())!;
          expect(caption.y + caption.height).toBeLessThanOrEqual(figure.y + figure.height + 1);
          // Two hundred rows of the tree are the same row two hundred times: the checker looks at all but them.
          expect(await rulesBroken(view, { without: count > 60 ? '.relatives' : undefined })).toEqual([]);
          expect(faults).toEqual([]);
        });
      },
      180_000,
    );
  },
);

test.each([
  ['no-story', '.story', /no story in this language yet/],
  ['one-animal', '.story', /no story in this language yet/],
  ['no-tree', '#relatives', /no tree yet.*Add one to its records/],
  ['no-values', '#values', /No animal has a value for this trait yet\. Add specimens/],
])('%s says in %s what is missing', async (id, place, words) => {
  await visit(addressOf(id), { viewport: desktop }, async ({ view }) => {
    expect(await view.locator(place).innerText()).toMatch(words);
  });
});

test('a story of few words begins where a long one does on a gallery screen', async () => {
  await visit(addressOf('every-focus'), { viewport: { width: 1080, height: 1920 } }, async ({ view }) => {
    expect(await view.locator('.story').evaluate((story) => story.clientWidth)).toBe(1080);
  });
});

test('a page without values prints no number as a value', async () => {
  await visit(addressOf('no-values'), { viewport: desktop }, async ({ view }) => {
    const printed = await view.locator('#values .values tr[data-of] td.number a').allInnerTexts();
    expect(printed).toHaveLength(6);
    for (const text of printed) expect(text).not.toMatch(/\d/);
  });
});

describe('a step of a story', () => {
  const shows: readonly (readonly [step: number, what: string, shown: string])[] = [
    [1, 'one animal', '.layer-focus.in-focus[data-of="six"] .focus-ring'],
    [2, 'a pair', '.layer-labels.near-focus[data-of="one"], .layer-focus.near-focus[data-of="one"]'],
    [3, 'a clade', '.layer-branches.near-focus[data-of="five"] .twig'],
    [4, 'a branch with its ribbon', '.layer-ribbons.near-focus .ribbon'],
    [5, 'an interval with its count', '.layer-slices.in-focus[data-of="interval-40-30"] .slice-words'],
    [7, 'a slice', '.layer-slices.in-focus[data-of="slice-32"] .slice-line'],
    [9, 'the table', '.plate-list li[data-of="four"] a'],
  ];

  test.each([phone, desktop])('calls up what it asks for, at %o', async (viewport) => {
    await visit(addressOf('every-focus'), { viewport }, async ({ view, faults }) => {
      for (const [step, what, shown] of shows) {
        await readStep(view, `[data-step="${step}"]`);
        const seen = view.locator('.figure').locator(`:is(${shown})`);
        await expect
          .poll(
            () =>
              seen.evaluateAll((all) =>
                all.some(
                  (each) =>
                    each.getClientRects().length > 0 && getComputedStyle(each).visibility === 'visible',
                ),
              ),
            { message: what },
          )
          .toBe(true);
      }
      const rows = await view
        .locator('.plate-list li')
        .evaluateAll((all) => all.map((row) => row.clientHeight));
      expect(Math.min(...rows)).toBeGreaterThanOrEqual(43);
      expect(faults).toEqual([]);
    });
  });
});

describe('the cards of two hundred animals', () => {
  const explainer = () => addressOf('two-hundred');
  const id = 'evidence-muzzle-share-taxon-7';

  test('are fetched when they open, and closing gives the focus back', async () => {
    await visit(explainer(), { viewport: desktop }, async ({ view, faults }) => {
      const link = view.locator('#values tr[data-of="taxon-7"] a');
      await link.click();
      const card = view.locator(`#${id}`);
      await card.waitFor();
      expect(await card.evaluate((each) => each === document.activeElement)).toBe(true);
      expect(new URL(view.url()).hash).toBe(`#${id}`);
      expect(await card.locator('.specimens').count()).toBe(1);
      await view.keyboard.press('Escape');
      await card.waitFor({ state: 'detached' });
      expect(await link.evaluate((each) => each === document.activeElement)).toBe(true);
      await view.goBack();
      await card.waitFor();
      expect(await card.count()).toBe(1);
      expect(faults).toEqual([]);
    });
  });

  test('open from an address that names one', async () => {
    await visit(`${explainer()}#${id}`, { viewport: desktop }, async ({ view }) => {
      await view.locator(`#${id}.open`).waitFor();
    });
  });

  test('are pages of their own without script, with a way back and their sources', async () => {
    await visit(explainer(), { viewport: desktop, javaScriptEnabled: false }, async ({ view }) => {
      await view.locator('#values tr[data-of="taxon-7"] a').click();
      expect(await view.locator('.card').count()).toBe(1);
      expect(await view.locator('h1').innerText()).toBe('Two hundred animals');
      for (const link of await view.locator('.card-sources a').all())
        expect(await view.locator((await link.getAttribute('href'))!).count()).toBe(1);
      await view.locator('.card-close').click();
      expect(view.url()).toBe(explainer());
    });
  });

  test.each([phone, desktop])('as pages have no fault at %o', async (viewport) => {
    await visit(`${explainer()}evidence/taxon-3/`, { viewport }, async ({ view, faults }) => {
      expect(await rulesBroken(view)).toEqual([]);
      expect(await overflowOf(view)).toBe(0);
      expect(faults).toEqual([]);
    });
  });

  test('keep the page under two megabytes', async () => {
    expect((await stat(join(out, 'two-hundred', 'index.html'))).size).toBeLessThan(2_000_000);
  });
});

describe('the page in Arabic', () => {
  test.each([phone, desktop])('moves nothing at %o when the faces come late', async (viewport) => {
    await visit('about:blank', { viewport }, async ({ view }) => {
      expect(await shiftWithLateFaces(view, addressOf('right-to-left'))).toBe(0);
    });
  });

  test('runs from right to left, and its figure does not', async () => {
    await visit(addressOf('right-to-left'), { viewport: desktop }, async ({ view }) => {
      expect(await view.locator('html').getAttribute('dir')).toBe('rtl');
      const [story, figure] = await Promise.all([
        view.locator('h1').boundingBox(),
        view.locator('.figure').boundingBox(),
      ]);
      expect(story!.x).toBeGreaterThan(figure!.x + figure!.width);
      const ticks = await view
        .locator('.plate-wide .value-tick')
        .evaluateAll((all) =>
          all.map((tick) => [Number(tick.textContent), tick.getBoundingClientRect().x] as const),
        );
      const sorted = [...ticks].sort((a, b) => a[0] - b[0]);
      expect(sorted.map(([, x]) => x)).toEqual(ticks.map(([, x]) => x).sort((a, b) => a - b));
    });
  });

  test('keeps the figures of a value and of an age in their order on the screen', async () => {
    await visit(addressOf('right-to-left'), { viewport: desktop }, async ({ view }) => {
      const orders = await view.locator('#values .values tr[data-of]').evaluateAll((rows) =>
        rows.flatMap((row) =>
          [...row.querySelectorAll('td')].map((cell) => {
            const walker = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT);
            const places: number[] = [];
            for (let node = walker.nextNode(); node; node = walker.nextNode())
              for (const { index } of node.textContent!.matchAll(/\d+(\.\d+)?/g)) {
                const range = document.createRange();
                range.setStart(node, index);
                range.setEnd(node, index + 1);
                places.push(range.getBoundingClientRect().x);
              }
            return places;
          }),
        ),
      );
      const several = orders.filter((places) => places.length > 1);
      expect(several.length).toBeGreaterThan(6);
      for (const places of several) expect(places).toEqual([...places].sort((a, b) => a - b));
    });
  });
});
