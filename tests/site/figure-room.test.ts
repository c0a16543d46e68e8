import type { Page } from 'playwright';
import { describe, expect, inject, test } from 'vitest';
import { useBrowser } from './open-page.ts';
import { readStep, visit } from './visit.ts';

/**
 * Words that cannot be read are not there: in the figure none lies on another, none is cut by the room of the caption, and
 * none hides a mark that is there to be counted.
 */
useBrowser();
const site = inject('siteUrl');
const pages = ['reed-trunks/', 'reed-trunks/es/', 'loam-delvers/', 'loam-delvers/es/'];
const sizes = [
  { width: 360, height: 640 },
  { width: 390, height: 844 },
  { width: 768, height: 1024 },
  { width: 1024, height: 768 },
  { width: 1280, height: 720 },
  { width: 1366, height: 768 },
  { width: 1440, height: 900 },
  { width: 1080, height: 1920 },
];

/** Words of the figure that lie on each other, or on a mark of a line across the tree, as they are drawn now. */
function covered(view: Page): Promise<string[]> {
  return view.evaluate(() => {
    const figure = document.querySelector('.figure')!;
    const isDrawn = (each: Element) =>
      each.checkVisibility({ visibilityProperty: true, opacityProperty: true });
    const isList = document.querySelector('lineage-plate[data-show="table"]') !== null;
    const words = figure.querySelectorAll(
      `${isList ? '' : 'svg text,'} .caption > p, .caption .restoration, .walk button, .plate-list p, .plate-list li > *`,
    );
    const boxes = [...words].filter(isDrawn).flatMap((each) => {
      const said = each.textContent.trim().replace(/\s+/g, ' ');
      const lines = document.createRange();
      lines.selectNodeContents(each);
      const isWhole = each instanceof SVGElement || each.tagName === 'BUTTON';
      const scroller = each.closest('.plate-list')?.getBoundingClientRect();
      return (isWhole ? [each.getBoundingClientRect()] : [...lines.getClientRects()])
        .filter((box) => box.width > 1 && (!scroller || box.bottom < scroller.bottom - 68))
        .map((box) => ({ each, said, box }));
    });
    const overlap = (a: DOMRect, b: DOMRect, share: number) =>
      Math.min(a.right, b.right) - Math.max(a.left, b.left) > 2 &&
      Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > share * Math.min(a.height, b.height);
    const onWords = boxes.flatMap((one, index) =>
      boxes
        .slice(index + 1)
        .filter(({ each }) => !each.contains(one.each) && !one.each.contains(each))
        // Lines of an SVG text have room above and below their letters.
        .filter(({ box }) => overlap(one.box, box, 0.4))
        .map((other) => `“${other.said}” on “${one.said}”`),
    );
    const marks = [...figure.querySelectorAll('.layer-slices.in-focus .cut')].filter(isDrawn);
    const names = boxes.filter(({ each }) => each.matches('.taxon-name'));
    const onMarks = marks.flatMap((mark) =>
      names
        .filter(({ box }) => overlap(mark.getBoundingClientRect(), box, 0.25))
        .map(({ said }) => `“${said}” on a mark of the line`),
    );
    return [...onWords, ...onMarks];
  });
}

test('every animal has its name in the figure of 24 at 1440 px', async () => {
  await visit(`${site}reed-trunks/`, { viewport: { width: 1440, height: 900 } }, async ({ view }) => {
    const plate = view.locator('.plate:visible');
    const animals = await view.locator('.caption').count();
    expect(animals).toBe(24);
    expect(await plate.locator('.layer-labels .taxon-name').count()).toBe(animals);
  });
});

describe.each(pages)('words of the figure of %s', (path) => {
  test.each(sizes)('lie at no step on each other, at %o', async (viewport) => {
    await visit(`${site}${path}`, { viewport }, async ({ view }) => {
      const steps = await view.locator('.step').count();
      expect(steps).toBeGreaterThan(5);
      for (let step = 1; step <= steps; step++) {
        await readStep(view, `.step[data-step="${step}"]`);
        await expect.poll(() => view.locator('.step.current').getAttribute('data-step')).toBe(String(step));
        expect(await covered(view), `step ${step}`).toEqual([]);
      }
    });
  });
});

describe.each(pages)('the captions of %s', (path) => {
  test.each(sizes)('are whole in their room, at %o', async (viewport) => {
    await visit(`${site}${path}`, { viewport }, async ({ view }) => {
      const cut = await view.evaluate(() => {
        const captions = [...document.querySelectorAll<HTMLElement>('.caption')];
        const plate = document.querySelector<HTMLElement>('lineage-plate')!;
        return ['bone', 'restored'].flatMap((restoration) => {
          plate.dataset['restoration'] = restoration;
          return captions.flatMap((caption) => {
            for (const each of captions) each.hidden = each !== caption;
            const link = caption.querySelector('.caption-link a')!;
            const words = document.createRange();
            words.selectNodeContents(link);
            const past = words.getBoundingClientRect().bottom - caption.getBoundingClientRect().bottom;
            return past > 0 ? [`${caption.dataset['of']} ${restoration}: ${past}`] : [];
          });
        });
      });
      expect(cut).toEqual([]);
    });
  });
});
