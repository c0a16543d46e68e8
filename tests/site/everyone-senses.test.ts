import type { Page } from 'playwright';
import { describe, expect, inject, test } from 'vitest';
import { overflowOf, useBrowser } from './open-page.ts';
import { readStep, visit } from './visit.ts';

useBrowser();
const explainer = `${inject('siteUrl')}reed-trunks/`;
const desktop = { width: 1440, height: 900 };
const phone = { width: 390, height: 844 };

/** Elements with words of their own whose words run out of a box that cuts them off. */
function cutWords(view: Page): Promise<string[]> {
  return view.evaluate(() =>
    [...document.querySelectorAll('main *, section *, footer *, header *')].flatMap((element) => {
      const { overflowX, overflowY, clip, clipPath } = getComputedStyle(element);
      const cuts = overflowX === 'hidden' || overflowY === 'hidden' || overflowX === 'clip';
      const unseen =
        clipPath !== 'none' || clip !== 'auto' || element.closest('.visually-hidden, svg, [popover]');
      if (!cuts || unseen || element.clientWidth === 0) return [];
      const past =
        element.scrollHeight > element.clientHeight + 1 || element.scrollWidth > element.clientWidth + 1;
      return past ? [`${element.tagName} ${element.className}`] : [];
    }),
  );
}

describe('at 400% zoom: 1280 by 1024 pixels seen as 320 by 256 (WCAG 2.2, 1.4.10)', () => {
  const viewport = { width: 320, height: 256 };

  test('the figure is not pinned, and title, figure, caption and story follow each other', async () => {
    await visit(explainer, { viewport }, async ({ view }) => {
      expect(await view.locator('.figure').evaluate((figure) => getComputedStyle(figure).position)).toBe(
        'static',
      );
      const boxes = await Promise.all(
        ['h1', '.question', '.plate:visible', '.caption:visible', '.story > p', '.step[data-step="1"]'].map(
          (selector) => view.locator(selector).first().boundingBox(),
        ),
      );
      boxes.slice(1).forEach((box, index) => {
        const above = boxes[index]!;
        expect(box!.y).toBeGreaterThanOrEqual(above.y + above.height - 1);
      });
    });
  });

  test('no caption is cut and every word of the story lies within the width', async () => {
    await visit(explainer, { viewport }, async ({ view }) => {
      expect(await cutWords(view)).toEqual([]);
      const outside = await view.locator('.caption:visible p, .story > p, .step > *').evaluateAll((all) =>
        all.flatMap((each) => {
          const { left, right } = each.getBoundingClientRect();
          const unseen = each.matches('.visually-hidden, [hidden]') || right === left;
          return unseen || (left >= 8 && right <= innerWidth - 8)
            ? []
            : [`${each.className} ${left} ${right}`];
        }),
      );
      expect(outside).toEqual([]);
    });
  });

  test('a card fills the screen, scrolls, and closes', async () => {
    await visit(explainer, { viewport }, async ({ view }) => {
      await view.locator('.step .value').first().click();
      const card = view.locator('.card.open');
      const box = (await card.boundingBox())!;
      expect(box.width).toBe(320);
      expect(box.height).toBeGreaterThan(200);
      expect(await card.evaluate((open) => open.scrollHeight > open.clientHeight)).toBe(true);
      await card.locator('[data-close]').click();
      await expect.poll(() => view.locator('.card.open').count()).toBe(0);
    });
  });
});

/** The four overrides of WCAG 2.2 1.4.12, as its text gives them. */
const spacing = `* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
  p { margin-bottom: 2em !important; }`;

/** Sets rules that a visitor's own style sheet would set; the content policy lets no page do so, but a constructed sheet stands. */
async function override(view: Page, rules: string): Promise<void> {
  await view.evaluate((text) => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(text);
    document.adoptedStyleSheets.push(sheet);
  }, rules);
}

describe('with the text spacing of WCAG 2.2 1.4.12', () => {
  test.each([phone, desktop])('nothing is cut and nothing scrolls sideways at %o', async (viewport) => {
    await visit(explainer, { viewport }, async ({ view }) => {
      await override(view, spacing);
      expect(await overflowOf(view)).toBeLessThanOrEqual(0);
      expect(await cutWords(view)).toEqual([]);
      expect(await view.locator('.caption:visible .caption-value').isVisible()).toBe(true);
    });
  });

  test.each([phone, desktop])('title, masthead, figure and caption keep apart at %o', async (viewport) => {
    await visit(explainer, { viewport }, async ({ view }) => {
      await override(view, spacing);
      const [masthead, title, figure, caption] = await Promise.all(
        ['.masthead', 'h1', '.figure', '.caption:visible'].map((each) => view.locator(each).boundingBox()),
      );
      expect(title!.y).toBeGreaterThanOrEqual(masthead!.y + masthead!.height);
      expect(caption!.y + caption!.height).toBeLessThanOrEqual(figure!.y + figure!.height + 1);
      const key = view.locator('.plate:visible .layer-key');
      if ((await key.count()) > 0)
        expect(caption!.y + caption!.height).toBeLessThanOrEqual((await key.boundingBox())!.y + 1);
    });
  });
});

describe('at 200% zoom (WCAG 2.2, 1.4.4), and on a small phone', () => {
  test.each([
    { width: 640, height: 512 },
    { width: 720, height: 450 },
    { width: 960, height: 540 },
    { width: 390, height: 664 },
  ])('a screen of %o has all words, uncut', async (viewport) => {
    await visit(explainer, { viewport, deviceScaleFactor: 2 }, async ({ view }) => {
      expect(await overflowOf(view)).toBeLessThanOrEqual(0);
      expect(await cutWords(view)).toEqual([]);
      const figure = (await view.locator('.figure').boundingBox())!;
      const caption = (await view.locator('.caption:visible').boundingBox())!;
      expect(caption.y + caption.height, 'the caption ends inside the figure').toBeLessThanOrEqual(
        figure.y + figure.height + 1,
      );
    });
  });
});

test('in forced colours marks, words and controls keep their contrast, with no colour of ours left on them', async () => {
  await visit(explainer, { viewport: desktop, forcedColors: 'active' }, async ({ view }) => {
    const used = await view.evaluate(() => {
      const of = (selector: string, property: string) =>
        getComputedStyle(document.querySelector(selector)!).getPropertyValue(property);
      const probe = document.createElement('i');
      document.body.append(probe);
      const system = (name: string) => {
        probe.setAttribute('hidden', '');
        const sheet = new CSSStyleSheet();
        sheet.replaceSync(`body > i[hidden] { color: ${name} !important; forced-color-adjust: none }`);
        document.adoptedStyleSheets = [sheet];
        return getComputedStyle(probe).color;
      };
      return {
        canvas: system('Canvas'),
        ink: system('CanvasText'),
        plate: of('.plate-wide', 'background-color'),
        disc: of('.plate-wide .layer-marks .disc', 'fill'),
        name: of('.plate-wide .taxon-name', 'fill'),
        halo: of('.plate-wide .taxon-name', 'stroke'),
        branch: of('.plate-wide .branch', 'stroke'),
      };
    });
    expect(used.ink).not.toBe(used.canvas);
    expect(used).toMatchObject({
      plate: used.canvas,
      disc: used.ink,
      name: used.ink,
      halo: used.canvas,
      branch: used.ink,
    });
  });
});

describe('reduced motion', () => {
  const runningAfterScroll = async (view: Page) => {
    await readStep(view, '.step[data-step="4"]');
    await expect.poll(() => view.locator('.step[data-step="4"].current').count()).toBe(1);
    return view.evaluate(() => document.getAnimations().length);
  };

  test('moves nothing, and ends in the same picture as motion does', async () => {
    const focus = '.plate:visible .layer-focus.in-focus';
    const shown: (string | null)[] = [];
    for (const reducedMotion of ['reduce', 'no-preference'] as const) {
      await visit(explainer, { viewport: desktop, reducedMotion }, async ({ view }) => {
        const running = await runningAfterScroll(view);
        if (reducedMotion === 'reduce') expect(running).toBe(0);
        else expect(running).toBeGreaterThan(0);
        shown.push(await view.locator(focus).first().getAttribute('data-of'));
      });
    }
    expect(shown[0]).toBe(shown[1]);
  });
});

test('print has every step, the wide plate, table and cards, and nothing pinned', async () => {
  await visit(explainer, { viewport: { width: 794, height: 1123 } }, async ({ view }) => {
    await view.emulateMedia({ media: 'print' });
    expect(await view.locator('.step:visible').count()).toBe(9);
    expect(await view.locator('.plate-wide').isVisible()).toBe(true);
    expect(await view.locator('.plate:visible').count()).toBe(1);
    expect(await view.locator('#values .values tr[data-of]:visible').count()).toBe(24);
    expect(await view.locator('.card:visible').count()).toBe(24);
    const pinned = await view.evaluate(() =>
      [...document.querySelectorAll('body *')]
        .filter((element) => ['fixed', 'sticky'].includes(getComputedStyle(element).position))
        .filter((element) => element.getClientRects().length > 0)
        .map((element) => element.className),
    );
    expect(pinned).toEqual([]);
    const [plate, mat] = await Promise.all([
      view.locator('.plate-wide').boundingBox(),
      view.locator('.mat').boundingBox(),
    ]);
    expect(plate!.height).toBeGreaterThan(400);
    expect(mat!.height).toBeGreaterThanOrEqual(plate!.height - 1);
    expect(await overflowOf(view)).toBeLessThanOrEqual(0);
  });
});

test('on paper no table is cut: each has the width of the page between its margins', async () => {
  // A4 in CSS pixels less the margins of print.css, 178 mm.
  await visit(explainer, { viewport: { width: 673, height: 1123 } }, async ({ view }) => {
    await view.emulateMedia({ media: 'print' });
    const cut = await view
      .locator('.table-scroll')
      .evaluateAll((all) =>
        all
          .filter((each) => each.scrollWidth > each.clientWidth + 1)
          .map((each) => each.getAttribute('aria-label') ?? each.className),
      );
    expect(cut).toEqual([]);
  });
});
